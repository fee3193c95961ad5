"""The season's patterns, and a size block pasted as text."""
