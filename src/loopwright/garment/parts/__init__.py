"""What constructions share: bodies, faces with necks and shoulders, sleeves, edges and bands."""
