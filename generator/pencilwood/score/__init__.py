"""What a pruning loses, and the scoring sheet that the browser reads."""
