"""A garment's bench: its own questions, and what changes if she changes something."""
