"""For all tests: no test touches the folder of whoever runs it, and a busy machine is no fault.

Hypothesis asks for no deadline; speed is measured in tests/bench. TALK_KIT_FUZZ asks for more tries than a run has time
for (DEVELOPERS.md). A hundred processes are started, kernels among them: what Python compiles is kept for the next.
"""

import os
import sys

import pytest
from hypothesis import settings

settings.register_profile("kit", deadline=None, max_examples=int(os.environ.get("TALK_KIT_FUZZ", "100")))
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
