"""The mechanics: pure functions on SI numbers and numpy arrays, one module per subject."""
