"""The yarns of a season: fibres, put-up, grist, and a form to write them."""
