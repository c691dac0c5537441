"""Outlines of the parts of a wheel end in section, in real millimetres, from a setup's own dimensions."""
