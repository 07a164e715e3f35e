"""Names of places and letters of wood: where each is readable and in nobody's way."""
