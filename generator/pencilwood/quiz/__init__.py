"""What a quiz is made of, and its exercises."""
