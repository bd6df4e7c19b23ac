"""Hours of use in minutes: moves, changes of talk and reloads, with memory and kernels before and after each."""

import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

DRAWN = ".talk-desk .talk-large"


@dataclass(frozen=True)
class Held:
    """What the kit holds: resident memory of its kernels and of its server [MB], and the number of kernels."""

    kernels: int
    kernel_memory: float
    server_memory: float


def held(kit: Any) -> Held:
    """Return what a running kit holds now."""
    kernels = kit.kernels()
    return Held(len(kernels), sum(map(_memory, kernels)), _memory(kit.server()))


def _memory(process: Any) -> float:
    return process.memory_info().rss / 1e6


def move(page: Any, times: int) -> None:
    """Move a slider to and fro, and wait until Python has followed."""
    slide = page.locator("input.talk-slide").nth(2)
    slide.focus()
    for place in range(times):
        page.keyboard.press("ArrowRight" if place % 2 else "ArrowLeft")
    page.wait_for_timeout(1000)


def change_talk(page: Any, times: int) -> None:
    """Choose one talk after another, waiting for each."""
    choice = page.get_by_label("Talk", exact=True)
    names = choice.evaluate("select => [...select.options].map((option) => option.value)")
    for _ in range(times):
        before = page.title()
        choice.select_option(names[(names.index(choice.input_value()) + 1) % len(names)])
        page.wait_for_function("before => document.title !== before", arg=before)
    page.wait_for_timeout(500)


def reload(page: Any, times: int) -> None:
    """Load the page again and again, each time until it is drawn."""
    for _ in range(times):
        page.reload()
        page.wait_for_selector(DRAWN)


def warm(page: Any) -> None:
    """Use a page that is drawn until what is read once is read."""
    move(page, 60)
    change_talk(page, 6)


def over(kit: Any, use: Callable[[], None]) -> tuple[Held, Held]:
    """Return what a kit holds before and after it is used in some way."""
    before = _settled(kit)
    use()
    return before, _settled(kit)


def _settled(kit: Any) -> Held:
    until = time.monotonic() + 60
    while time.monotonic() < until and len(kit.kernels()) > 1:
        time.sleep(0.5)
    time.sleep(1)
    return held(kit)
