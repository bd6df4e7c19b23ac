"""So that the tests of this folder can import `talks`."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
