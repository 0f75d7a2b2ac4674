"""A page written in Markdown as a notebook: its pieces in Python are cells, the rest is text.

Notebook format 4.5, by its published schema.
"""

import json
import re

from ...named_types import Document

MEDIA_TYPE = "application/x-ipynb+json"
_BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$\n?", re.MULTILINE | re.DOTALL)
_HEADING = re.compile(r"^## (.+)$", re.MULTILINE)


def notebook(page: str) -> bytes:
    """The bytes of a notebook of those parts of a page that have a piece in Python.

    page: Markdown whose `text` blocks are what the piece before them prints.
    """
    cells: list[Document] = []
    starts = [0, *(found.start() for found in _HEADING.finditer(page)), len(page)]
    for first, last in zip(starts, starts[1:], strict=False):
        part = page[first:last]
        if "```python" in part:
            _add(cells, part)
    for number, cell in enumerate(cells):
        cell["id"] = "cell-%d" % number
        cell["metadata"] = {}
    book = {
        "cells": cells,
        "metadata": {
            "kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"},
            "language_info": {"name": "python"},
        },
        "nbformat": 4,
        "nbformat_minor": 5,
    }
    return json.dumps(book, ensure_ascii=False, indent=1).encode() + b"\n"


def _add(cells: list[Document], part: str) -> None:
    at = 0
    for block in _BLOCK.finditer(part):
        _text(cells, part[at : block.start()])
        kind, body = block.groups()
        if kind == "python":
            cells.append(
                {
                    "cell_type": "code",
                    "execution_count": None,
                    "outputs": [],
                    "source": _lines(body.rstrip("\n")),
                }
            )
        elif kind == "text":
            shown = {"output_type": "stream", "name": "stdout", "text": _lines(body)}
            cells[-1]["outputs"] = [shown]
        at = block.end()
    _text(cells, part[at:])


def _text(cells: list[Document], text: str) -> None:
    if text.strip():
        cells.append({"cell_type": "markdown", "source": _lines(text.strip("\n"))})


def _lines(text: str) -> list[str]:
    return text.splitlines(keepends=True)
