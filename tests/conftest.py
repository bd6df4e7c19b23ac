"""For all tests: a busy machine is no fault, so hypothesis asks for no deadline; speed is measured in tests/bench."""

from hypothesis import settings

settings.register_profile("kit", deadline=None)
settings.load_profile("kit")
