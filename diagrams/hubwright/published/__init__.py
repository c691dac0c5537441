"""What others have published, beside what our functions give: one data file and one way to compute each value.

Tests and the page of sources and checks both read it, so that neither can drift from the other.
"""
