"""Commands that need more than a few lines; `pencilwood.cli` hands over to them."""
