"""Charts: all of them, a new one, and the bench on which one is drawn."""
