"""What each diagram says: results in, Scene out, one module per diagram."""
