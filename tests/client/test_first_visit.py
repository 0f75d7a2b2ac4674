"""What a first visit does not spend: the page is never laid out in the midst of its own work.

To ask for a size while the page is being drawn makes the browser lay it out at once, and once more
before it is painted: on a slow phone that was the longest that a finger had to wait.
"""

from client.conftest import Sheet

CATEGORIES = ["devtools.timeline", "v8.execute"]
WORK = ("FunctionCall", "RunMicrotasks", "TimerFire", "EventDispatch", "v8.evaluateModule")


def _traced(page, cdp):
    """Runs what the with-block does; its events are in the list that it gives."""
    events, ended = [], []
    cdp.on("Tracing.dataCollected", lambda message: events.extend(message["value"]))
    cdp.on("Tracing.tracingComplete", lambda _: ended.append(True))
    cdp.send("Tracing.start", {"traceConfig": {"includedCategories": CATEGORIES}})

    def end():
        cdp.send("Tracing.end")
        while not ended:
            page.wait_for_timeout(50)
        return events

    return end


def _inside_work(events):
    """Layouts that began within a call of the page's scripts."""
    work = [each for each in events if each["name"] in WORK and each["ph"] == "X"]
    return [
        layout
        for layout in events
        if layout["name"] == "Layout"
        and any(
            (one["pid"], one["tid"]) == (layout["pid"], layout["tid"])
            and one["ts"] <= layout["ts"] < one["ts"] + one["dur"]
            for one in work
        )
    ]


def _of_page(events):
    return [each for each in events if each["name"] in ("Layout", *WORK)]


def test_the_first_figures_stand_without_a_layout_in_the_midst_of_work(context, served):
    page = context.new_page()
    end = _traced(page, context.new_cdp_session(page))
    Sheet(page, served).open().ready()
    events = _of_page(end())
    assert any(each["name"] == "Layout" for each in events)
    assert any(each["name"] == "RunMicrotasks" for each in events)
    assert _inside_work(events) == []


def test_a_layout_that_is_asked_for_in_the_midst_is_seen(context, served):
    sheet = Sheet(context.new_page(), served).open().ready()
    end = _traced(sheet.page, context.new_cdp_session(sheet.page))
    sheet.page.evaluate(
        "() => new Promise(done => setTimeout(() => {"
        " document.querySelector('.plate').style.paddingTop = '40px';"
        " document.body.offsetHeight; done(); }))"
    )
    assert len(_inside_work(_of_page(end()))) >= 1
