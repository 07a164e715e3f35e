"""The exact plan: the cheapest pruning of a measured vine, and why."""
