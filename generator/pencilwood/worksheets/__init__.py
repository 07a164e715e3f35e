"""Papers for the workshop: worksheets, keys, cards, posters, sheets to measure on, a booklet."""
