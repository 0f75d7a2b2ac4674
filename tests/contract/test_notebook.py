"""The pieces in Python of /docs/begin as a notebook: run cell by cell, they print what it shows."""

import contextlib
import io
import json
import re

import pytest


@pytest.fixture
def book(client):
    response = client.get("/docs/begin.ipynb")
    assert response.status_code == 200
    assert response.mimetype == "application/x-ipynb+json"
    return json.loads(response.data)


def test_it_runs_from_its_first_cell_to_its_last(book, server, monkeypatch):
    monkeypatch.setenv("RINGWRIGHT", server)
    space: dict = {}
    ran = 0
    for cell in book["cells"]:
        if cell["cell_type"] == "code":
            printed = io.StringIO()
            with contextlib.redirect_stdout(printed):
                exec("".join(cell["source"]), space)
            shown = "".join("".join(one["text"]) for one in cell["outputs"])
            assert printed.getvalue() == shown
            ran += bool(shown)
    assert ran >= 2


def test_it_is_of_the_published_format(book):
    """Notebook format 4.5, from memory: what each cell must have, and nothing beside it."""
    assert (book["nbformat"], book["nbformat_minor"]) == (4, 5)
    assert set(book) == {"cells", "metadata", "nbformat", "nbformat_minor"}
    names = [cell["id"] for cell in book["cells"]]
    assert len(set(names)) == len(names)
    for cell in book["cells"]:
        assert re.fullmatch("[a-zA-Z0-9-_]{1,64}", cell["id"])
        wanted = {"cell_type", "id", "metadata", "source"}
        if cell["cell_type"] == "code":
            wanted |= {"execution_count", "outputs"}
        else:
            assert cell["cell_type"] == "markdown"
        assert set(cell) == wanted
        # Lines keep their ends, all but the last.
        assert all(line.endswith("\n") for line in cell["source"][:-1])
        for output in cell.get("outputs", ()):
            assert set(output) == {"output_type", "name", "text"}


def test_all_python_of_the_page_is_in_it_and_nothing_else(book, root):
    page = (root / "openapi" / "begin.md").read_text(encoding="utf-8")
    pieces = re.findall("(?ms)^```python\n(.*?)\n```$", page)
    cells = ["".join(one["source"]) for one in book["cells"] if one["cell_type"] == "code"]
    assert cells == pieces


def test_the_page_leads_to_it(client):
    assert '<a href="/docs/begin.ipynb">' in client.get("/docs/begin").get_data(as_text=True)
