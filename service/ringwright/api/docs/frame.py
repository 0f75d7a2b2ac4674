"""What all pages at /docs share: the head, the links from one to the other, the policy."""

import gzip
import hashlib
from collections import OrderedDict
from collections.abc import Iterable, Mapping
from html import escape

from ..static_app import Held

# Address -> what the link to it says, in the order of the links.
PAGES = OrderedDict(
    (
        ("/docs", "Every call"),
        ("/docs/begin", "How to begin"),
        ("/docs/example", "A worked example"),
        ("/docs/problems", "Problems"),
        ("/docs/limits", "Limits and settings"),
        ("/docs/changes", "Changes"),
    )
)
_ELSEWHERE = (("/openapi.json", "openapi.json"), ("/", "The app"))

# Style and scripts of this very host; the page of calls asks the service itself, and its pictures
# stand within its style sheet.
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
_PAGE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>%(title)s - Ringwright</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="data:,">
%(head)s</head>
<body><header><nav aria-label="Pages"><ul>%(links)s</ul></nav></header>
<main>
%(body)s</main></body></html>
"""


def page(address: str, body: str, styles: Iterable[str] = (), scripts: Iterable[str] = ()) -> Held:
    """A page as held in memory.

    address: its own, one of PAGES. body: HTML that begins with a heading. styles, scripts: names of
    files below /docs, the scripts in the order in which they run.
    """
    head = "".join('<link rel="stylesheet" href="/docs/%s">\n' % name for name in styles)
    head += "".join('<script defer src="/docs/%s"></script>\n' % name for name in scripts)
    links = "".join(
        '<li><a href="%s"%s>%s</a></li>'
        % (to, ' aria-current="page"' if to == address else "", escape(said))
        for to, said in (*PAGES.items(), *_ELSEWHERE)
    )
    text = _PAGE % {
        "title": escape(PAGES[address]),
        "head": head,
        "links": links,
        "body": body,
    }
    return hold(text.encode(), "text/html")


def hold(data: bytes, media_type: str, packed: Mapping[str, bytes] | None = None) -> Held:
    """Bytes as held in memory, with what they are once compressed.

    packed: encoding name -> bytes that stand ready; gzip is made where it is not among them.
    """
    content = {"identity": data, **(packed or {})}
    if "gzip" not in content:
        content["gzip"] = gzip.compress(data, 9, mtime=0)
    return Held(
        media_type=media_type,
        for_ever=False,
        content=content,
        tag=hashlib.sha256(data).hexdigest()[:32],
        policy=POLICY,
        file_name="",
    )
