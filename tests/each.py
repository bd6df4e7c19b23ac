"""One test over many cases, which lists those that fail: a case a test is slow to collect and says no more."""

from collections.abc import Callable, Iterable
from typing import Any

MOST_SHOWN = 40


def for_each(names: str | tuple[str, ...], cases: Iterable[Any]) -> Callable[[Callable[..., None]], Callable[[], None]]:
    """Make of a check with arguments one test over every case; placed twice, over every pair.

    A case is one value for each name, or the value alone where there is one name.
    """
    called = [name.strip() for name in names.split(",")] if isinstance(names, str) else list(names)

    def decorate(check: Callable[..., None]) -> Callable[[], None]:
        inner = getattr(check, "check", check)
        before = getattr(check, "cases", [{}])
        rows = [(case,) if len(called) == 1 else case for case in cases]
        every = [{**dict(zip(called, row, strict=True)), **known} for row in rows for known in before]

        def test() -> None:
            failing = [words for case in every if (words := fault_of(inner, case))]
            shown = "\n".join(failing[:MOST_SHOWN])
            assert every, "there is no case to check"
            assert not failing, f"{len(failing)} of {len(every)} cases fail:\n{shown}"

        test.__name__, test.__doc__, test.__module__ = inner.__name__, inner.__doc__, inner.__module__
        test.check, test.cases = inner, every  # type: ignore[attr-defined]
        return test

    return decorate


def fault_of(check: Callable[..., None], case: dict[str, Any]) -> str:
    """Return which case fails and how; empty when it passes."""
    try:
        check(**case)
    except Exception as fault:  # whatever it is, the other cases are tried too
        first = (str(fault).splitlines() or [""])[0]
        shown = ", ".join(f"{name}={str(value)[:80]!r}" for name, value in case.items())
        return f"  {shown}: {type(fault).__name__} {first}"
    return ""
