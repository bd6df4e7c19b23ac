"""The stage in a running notebook that shows it twice."""

from demo_panel import NAMES, WRITTEN, read_out
from live import notebook_page, run_all_cells


def test_two_views_follow_together_and_share_one_script(served, browser):
    kind, address = served
    with notebook_page(browser, "about:blank") as (page, errors):
        large = []

        def note(data):
            if len(data) > 4e6:
                large.append(data)

        page.on("websocket", lambda socket: socket.on("framereceived", note))
        page.goto(address("two_views.ipynb"))
        if kind == "lab":
            run_all_cells(page)
        page.locator("[data-chart=day] .main-svg").nth(5).wait_for()
        page.locator(".noUi-handle").nth(NAMES.index("Olive oil")).focus()
        page.keyboard.press("ArrowRight")
        steps = WRITTEN.copy()
        steps[NAMES.index("Olive oil")] += 1
        for view in range(2):
            page.locator(".talk-stage").nth(view).get_by_text(read_out(steps)[0].value, exact=True).wait_for()
        assert len(large) == 1
        assert errors == []
