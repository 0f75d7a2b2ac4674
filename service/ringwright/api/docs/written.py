"""The pages that are written in Markdown: how to begin, the worked example, the changelog.

In a checkout they lie in openapi/; in an installed package beside the examples, see pyproject.toml.
"""

from collections.abc import Sequence
from functools import cache
from html import escape
from pathlib import Path
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.token import Token

_FOLDERS = (Path(__file__).parents[1] / "examples", Path(__file__).parents[4] / "openapi")
FILES = {
    "/docs/begin": "begin.md",
    "/docs/example": "examples/worked_example.md",
    "/docs/changes": "CHANGELOG.md",
}
# What Markdown calls code that stands apart: between fences, or indented.
_CODE = ("fence", "code_block")
_LABELS = {"sh": "shell", "js": "JavaScript", "python": "Python", "html": "page"}


@cache
def source_of(address: str) -> str | None:
    """The Markdown of a page of FILES, None where its file is not installed."""
    name = FILES[address]
    # Installed, all lie in one folder.
    tried = [folder / part for folder in _FOLDERS for part in (name, Path(name).name)]
    found = next((path for path in tried if path.is_file()), None)
    return None if found is None else found.read_text(encoding="utf-8")


@cache
def body_of(address: str) -> str:
    """The HTML of a page of FILES; a word that it is not here where its file is not."""
    source = source_of(address)
    if source is None:
        return "<h1>%s</h1>\n<p>This page is not installed here.</p>\n" % escape(FILES[address])
    return str(_reader().render(source))


def _reader() -> MarkdownIt:
    # No HTML of its own: what stands in the text is shown as text.
    reader = MarkdownIt("commonmark", {"html": False}).enable("table")
    for kind in _CODE:
        reader.add_render_rule(kind, _code)
    return reader


def _code(
    _renderer: Any, tokens: Sequence[Token], index: int, _options: Any, _environment: Any
) -> str:
    token = tokens[index]
    kind = token.info or "text"
    label = _LABELS.get(kind, "printed")
    number = 1 + sum(each.type in _CODE for each in tokens[:index])
    # Long lines scroll, by the keyboard too.
    opening = '<pre class="%s" tabindex="0" role="region" aria-label="%s %d">' % (
        escape(kind),
        label,
        number,
    )
    return "%s<code>%s</code></pre>\n" % (opening, escape(token.content))
