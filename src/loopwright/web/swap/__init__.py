"""What else a garment could be knitted in, side by side with the yarn it has."""
