"""The templates of what is sent: every text in them is escaped, so that what somebody wrote shows and never acts."""

import functools
from pathlib import Path

import jinja2

WEB = Path(__file__).resolve().parent / "web"


@functools.cache
def _templates() -> jinja2.Environment:
    return jinja2.Environment(
        loader=jinja2.FileSystemLoader(WEB),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def filled(template: str, **values: object) -> str:
    """Return a template of ``kit/share/web`` with its places filled."""
    return _templates().get_template(template).render(**values)


def sheet(name: str) -> str:
    """Return a style sheet of ``kit/share/web``."""
    return (WEB / name).read_text(encoding="utf-8")
