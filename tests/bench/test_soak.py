"""Hours on stage: `python -m pytest tests/bench/test_soak.py -m bench -s` reports each part, and asserts nothing."""

import pytest
from live import notebook_page, open_browser
from running import Kit
from soak import DRAWN, change_talk, move, over, reload, warm

pytestmark = pytest.mark.bench


@pytest.mark.parametrize(
    ("use", "times"), [(move, 10_000), (change_talk, 60), (reload, 20)], ids=["moves", "talks", "reloads"]
)
def test_soak(tmp_path, use, times):
    kit = Kit(tmp_path)
    try:
        with open_browser() as browser, notebook_page(browser, kit.address) as (page, errors):
            page.wait_for_selector(DRAWN)
            warm(page)
            reload(page, 2)
            stages = over(kit, lambda: use(page, times))
    finally:
        kit.stop()
    print(f"\n{times} times {use.__name__}: {len(errors)} errors of the page")
    for when, now in zip(("before", "after"), stages, strict=True):
        print(f"  {when}: {now.kernels} kernel of {now.kernel_memory:.1f} MB, server {now.server_memory:.1f} MB")
    before, after = stages
    kernel, server = after.kernel_memory / before.kernel_memory - 1, after.server_memory / before.server_memory - 1
    print(f"  grown by: kernel {kernel:+.1%}, server {server:+.1%}")
