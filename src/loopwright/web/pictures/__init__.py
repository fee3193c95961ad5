"""Pictures of a garment before it is knitted."""
