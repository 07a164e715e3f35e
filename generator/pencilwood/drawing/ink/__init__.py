"""What all drawings are made of: points, strokes, colours, and how they are written as SVG."""
