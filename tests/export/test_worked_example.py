"""The worked example runs as it stands, and prints what it says it prints."""

from export import worked_example


def test_the_page_prints_what_it_says(server):
    page = worked_example.PAGE.read_text(encoding="utf-8")
    assert page == worked_example.ran(page, server), (
        "openapi/examples/worked_example.md is stale: start the service and run "
        "PYTHONPATH=service:tests python -m export.worked_example ADDRESS"
    )
    blocks = worked_example._BLOCK.findall(page)
    assert [language for language, _ in blocks].count("text") == 6
    assert all(body.strip() for _, body in blocks)
