"""For all tests: no test touches the folder of whoever runs it, and a busy machine is no fault.

Hypothesis asks for no deadline; speed is measured in tests/bench. A run draws the same examples as the one before, so
that it fails by what was changed; TALK_KIT_FUZZ and TALK_KIT_TRIES ask for more than a run has time for, and for others
each time (DEVELOPERS.md). A hundred processes are started, kernels among them: what Python compiles is kept for the
next.
"""

import os
import sys

import pytest
from hypothesis import settings

AT_RANDOM = not os.environ.keys().isdisjoint(("TALK_KIT_FUZZ", "TALK_KIT_TRIES"))
FUZZ = int(os.environ.get("TALK_KIT_FUZZ", "100"))
settings.register_profile("kit", deadline=None, max_examples=FUZZ, derandomize=not AT_RANDOM)
settings.load_profile("kit")
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
sys.dont_write_bytecode = False


@pytest.fixture(scope="session", autouse=True)
def own_folder_of_the_tests(tmp_path_factory):
    """Let the kit keep what it keeps in a folder of this run."""
    before = os.environ.get("TALK_KIT_HOME")
    os.environ["TALK_KIT_HOME"] = str(tmp_path_factory.mktemp("own") / "kit")
    yield
    if before is None:
        del os.environ["TALK_KIT_HOME"]
    else:
        os.environ["TALK_KIT_HOME"] = before
