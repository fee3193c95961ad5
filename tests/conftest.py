"""What holds for every test: how properties are searched."""

from hypothesis import settings

# The same examples on every machine and no clock, so that a red run is red again. To look further afield:
# make test ARGS="--hypothesis-profile explore"
settings.register_profile("house", deadline=None, derandomize=True)
settings.register_profile("explore", deadline=None, max_examples=2000)
settings.load_profile("house")
