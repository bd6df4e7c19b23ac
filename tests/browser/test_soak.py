"""A short hour on stage ends with what it began with; ``tests/bench/test_soak.py`` is the long one."""

from live import notebook_page
from running import Kit
from soak import DRAWN, change_talk, move, over, reload, warm

MOST_GROWTH = 1.05  # of a kernel
SWING = 40  # of the server, which reads the page's scripts into memory and gives them back when it likes [MB]


def test_moves_talks_and_reloads_leave_memory_and_kernels_as_they_were(tmp_path, browser):
    kit = Kit(tmp_path)
    try:
        with notebook_page(browser, kit.address) as (page, errors):
            page.wait_for_selector(DRAWN)
            warm(page)
            worked = over(kit, lambda: (move(page, 200), change_talk(page, 3)))
            reload(page, 1)
            reloaded = over(kit, lambda: reload(page, 2))
            assert errors == []
    finally:
        kit.stop()
    for before, after in (worked, reloaded):
        assert after.kernels == before.kernels == 1
        assert after.kernel_memory <= before.kernel_memory * MOST_GROWTH
        assert after.server_memory <= before.server_memory + SWING
