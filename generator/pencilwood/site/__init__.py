"""Puts every file of the handbook together in memory."""
