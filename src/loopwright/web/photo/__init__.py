"""Colours from a photo: sent, white paper tapped, colours found, corrected by hand, one of them kept for a lot."""
