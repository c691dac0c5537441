"""Runs the mechanics on a setup and holds what comes out."""
