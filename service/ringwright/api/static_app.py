"""The built phone app, held in memory and served from there: no request reads a file.

The whole app is a few hundred kilobytes, compressed once when the service starts (or at build time
where .br and .gz files lie beside the originals). A file with a hash in its name never
changes and may be kept for ever; everything else (the page, the service worker, the manifest) is
asked for again each time, and an unchanged one costs a 304.
"""

import base64
import gzip
import hashlib
import mimetypes
import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import NamedTuple

from flask import Response, request

from . import headers, limits

FOLDER = Path(__file__).parents[1] / "app"
# The app as one file: to be kept and handed on, not opened from here.
ONE_FILE = "ringwright.html"
# WebAssembly needs one word; all else comes from this very host, and the style sheet within the
# page is allowed by its hash (CSP 3, 6.7.3.3: the hash of just what stands in the element).
POLICY = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'%s; "
    "img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; "
    "manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
# The camera reads the code of a job that is handed on, when it is asked to.
PERMISSIONS = "camera=(self), microphone=(), geolocation=(), payment=(), usb=()"
_STYLE = re.compile(b"<style>(.*?)</style>", re.DOTALL)
# What Vite puts between the last dash and the extension: name-Ab3_x9Zk.js
_HASHED = re.compile("[.-][A-Za-z0-9_-]{8,}\\.[a-z0-9]+$")
_TYPES = {
    ".js": "text/javascript",
    ".mjs": "text/javascript",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".json": "application/json",
    ".svg": "image/svg+xml",
    ".woff2": "font/woff2",
}
_COMPRESSED = (".br", ".gz")
# Below this a compressed file saves less than its header costs.
_WORTH_COMPRESSING = 400


# content: encoding name ("br", "gzip", "identity") -> bytes. file_name: of what is to be saved.
class Held(NamedTuple):
    media_type: str
    for_ever: bool
    content: dict[str, bytes]
    tag: str
    policy: str
    file_name: str


def read_app(folder: Path = FOLDER) -> dict[str, Held]:
    """Path below the app's root -> Held, for every file of the built app; empty when not built."""
    if not (folder / "index.html").is_file():
        return {}
    return {
        path.relative_to(folder).as_posix(): _held(folder, path)
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.suffix not in _COMPRESSED
    }


def _held(folder: Path, path: Path) -> Held:
    data = path.read_bytes()
    name = path.relative_to(folder).as_posix()
    guessed = mimetypes.guess_type(name)[0]
    media_type = _TYPES.get(path.suffix) or guessed or "application/octet-stream"
    content = {"identity": data}
    for encoding, suffix in (("br", ".br"), ("gzip", ".gz")):
        beside = path.with_name(path.name + suffix)
        if beside.is_file():
            content[encoding] = beside.read_bytes()
    if "gzip" not in content and len(data) >= _WORTH_COMPRESSING:
        smaller = gzip.compress(data, 9, mtime=0)
        if len(smaller) < len(data):
            content["gzip"] = smaller
    for_ever = name.startswith("assets/") and bool(_HASHED.search(path.name))
    tag = hashlib.sha256(data).hexdigest()[:32]
    return Held(
        media_type=media_type,
        for_ever=for_ever,
        content=content,
        tag=tag,
        policy=_policy(data, media_type),
        file_name=ONE_FILE if name == ONE_FILE else "",
    )


def _policy(data: bytes, media_type: str) -> str:
    hashes = ""
    if media_type == "text/html":
        for style in _STYLE.findall(data):
            digest = base64.b64encode(hashlib.sha256(style).digest()).decode()
            hashes += " 'sha256-%s'" % digest
    return POLICY % hashes


def make_view(held: Mapping[str, Held]) -> Callable[..., Response]:
    """A view that serves `held` by the path below the root, the page itself at the root.

    The app keeps its own places behind the #, so no other address is the page's.
    """

    def view(name: str = "index.html") -> Response:
        return send(held[name])

    return view


def send(found: Held) -> Response:
    """What is held, in the best encoding that the caller takes, or 304 where he has it."""
    encoding = _best_encoding(found)
    # A cache must not hand the tag of one encoding out with the bytes of another.
    tag = found.tag if encoding == "identity" else "%s-%s" % (found.tag, encoding)
    if headers.is_known(tag):
        response = Response(status=304)
    else:
        response = Response(found.content[encoding], mimetype=found.media_type)
        if encoding != "identity":
            response.headers["Content-Encoding"] = encoding
    response.headers["ETag"] = '"%s"' % tag
    response.headers["Vary"] = "Accept-Encoding"
    response.headers["Cache-Control"] = (
        "public, max-age=%d, immutable" % limits.FOREVER_SECONDS if found.for_ever else "no-cache"
    )
    response.headers["Content-Security-Policy"] = found.policy
    if found.file_name:
        response.headers["Content-Disposition"] = 'attachment; filename="%s"' % found.file_name
    response.headers["Permissions-Policy"] = PERMISSIONS
    response.headers["Cross-Origin-Opener-Policy"] = "same-origin"
    return response


def _best_encoding(found: Held) -> str:
    offered = request.accept_encodings
    for encoding in ("br", "gzip"):
        if encoding in found.content and offered.quality(encoding) > 0:
            return encoding
    return "identity"
