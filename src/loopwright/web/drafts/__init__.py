"""A garment of one's own, without a pattern; and any garment over a range of sizes."""
