"""Explains what loads a wheel bearing: free bodies to scale and a lesson site from one vehicle file."""

__version__ = "0.1.0"
