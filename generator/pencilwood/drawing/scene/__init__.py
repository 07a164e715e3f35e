"""A whole vine with what stands around it, in all its states, as one scene."""
