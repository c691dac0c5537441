"""Property tests of the mechanics: no time limit for one example, machines are shared."""

from hypothesis import settings

settings.register_profile("no time limit", deadline=None)
settings.load_profile("no time limit")
