"""The cupboard: every lot, what it is for, its photo and label, and the whole of it as a table."""
