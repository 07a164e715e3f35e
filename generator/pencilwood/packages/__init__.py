"""Packages of open standards, which a learning system takes in."""
