"""Vineyard sums for a block: buds, crop, renovation, hours, shoots. Pure and exact."""
