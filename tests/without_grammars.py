"""Pytest's plugin for notebooks would load a library that builds 39 grammars, which takes seconds in each process.

They check one kind of address of Jupyter's own files, which no notebook has; ``kit.opening.host`` leaves them out too.
`pyproject.toml` names this file first, so that it comes before that plugin.
"""

import sys

sys.modules["rfc3987_syntax"] = None
