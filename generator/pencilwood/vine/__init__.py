"""The vine: model, cuts and measures."""
