"""The templates of what is sent: every text in them is escaped, so that what somebody wrote shows and never acts."""

import functools
from pathlib import Path

import jinja2

_WEB = Path(__file__).parent / "web"


@functools.cache
def _templates() -> jinja2.Environment:
    return jinja2.Environment(
        loader=jinja2.FileSystemLoader(_WEB),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def filled(template: str, **values: object) -> str:
    """Return a template of ``kit/share/web`` with its places filled."""
    return _templates().get_template(template).render(**values)


def sheet(name: str) -> str:
    """Return a style sheet or script of ``kit/share/web``."""
    return (_WEB / name).read_text(encoding="utf-8")
