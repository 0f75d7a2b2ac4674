"""The README and the worked example run as they stand, and print what they say they print."""

import pytest

from export import worked_example


@pytest.mark.parametrize("path", worked_example.PAGES, ids=lambda path: path.name)
def test_the_page_prints_what_it_says(server, path):
    page = path.read_text(encoding="utf-8")
    assert page == worked_example.ran(page, server), (
        path.name + " is stale: start the service and run "
        "PYTHONPATH=service:tests python -m export.worked_example ADDRESS"
    )
    shown = [body for language, body in worked_example._BLOCK.findall(page) if language == "text"]
    assert len(shown) >= 2
    assert all(body.strip() for body in shown)
