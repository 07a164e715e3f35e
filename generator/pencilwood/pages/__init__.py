"""The handbook's pages."""
