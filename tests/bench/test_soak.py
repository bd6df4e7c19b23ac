"""Hours on stage: run by `python -m pytest tests/bench/test_soak.py -m bench -s`; it reports, and asserts nothing."""

import pytest
from live import notebook_page, open_browser
from running import Kit
from soak import DRAWN, soak

pytestmark = pytest.mark.bench


def test_soak(tmp_path):
    kit = Kit(tmp_path)
    try:
        with open_browser() as browser, notebook_page(browser, kit.address) as (page, errors):
            page.wait_for_selector(DRAWN)
            parts = soak(kit, page, moves=10_000, talks=60, reloads=20)
    finally:
        kit.stop()
    print(f"\n{len(errors)} errors of the page")
    for name, stages in parts.items():
        for when, now in zip(("before", "after"), stages, strict=True):
            print(
                f"{name}, {when}: {now.kernels} kernel of {now.kernel_memory:.0f} MB, server {now.server_memory:.0f} MB"
            )
