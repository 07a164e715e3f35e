"""The wood itself: canes, old wood, trunk and arms, each drawn from its measurements."""
