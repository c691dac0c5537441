"""Tests that open built sites in a real browser."""
