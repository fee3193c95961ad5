"""A small season as text, for tests that change one line of it."""

SEASON = """\
name = "Two hats"
today = 2027-03-01
hours_a_week = 6
currency = "NZD"
rates = { EUR = "1.85" }

[bodies.mira]
name = "Mira"
wearer = "woman"
head_girth = "56 cm"

[yarns.fennock-dk]
name = "Fennock Croft DK"
fibres = { wool = 80, alpaca = 20 }
length = "115 m"
mass = "50 g"

[cupboard.lichen-box]
yarn = "fennock-dk"
colour = "Lichen"
weighed = "120 g"

[patterns.brim-hat]
name = "Hat with a brim"
construction = "hat"
gauge = "22 sts x 30 rows = 10 cm"
sizes = "S (M, L)"

[patterns.brim-hat.finished]
head_girth = "46 (50, 54) cm"
length = "22 (23, 24) cm"

[garments.hat]
name = "Hat"
pattern = "brim-hat"
for = "mira"
begun_on = 2027-03-02
done_on = 2027-03-09

[garments.hat.yarns.main]
yarn = "fennock-dk"
colour = "Lichen"

[shops.skerrow]
name = "Skerrow Yarn Room"
currency = "EUR"
postage = { flat = "6.50 EUR" }

[[shops.skerrow.offers]]
yarn = "fennock-dk"
price = "5.20 EUR"
"""


def changed(old: str, new: str) -> str:
    """Give the season with one piece of text changed; the piece stands in it."""
    assert old in SEASON
    return SEASON.replace(old, new, 1)
