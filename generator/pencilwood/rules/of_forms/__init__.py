"""Which rules a trained form goes by, and the figures that differ there; one module a form."""
