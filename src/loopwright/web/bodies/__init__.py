"""The people of a season: their measures, what is estimated, what does not agree, and how to take the tape."""
