"""The trainer's chapters: Markdown whose figures, words and drawings are filled in."""
