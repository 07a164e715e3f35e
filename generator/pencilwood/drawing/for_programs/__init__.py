"""What a script or another program gets to draw with, or to be tapped on."""
