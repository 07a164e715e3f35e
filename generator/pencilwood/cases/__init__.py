"""Trainers' files: read strictly, and every slip told in the trainer's words."""
