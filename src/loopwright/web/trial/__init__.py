"""What can be tried of a garment without keeping it, and the season as if it were so."""
