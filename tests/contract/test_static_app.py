"""The built phone app: from memory, compressed, kept or asked for again as each file should be."""

import gzip
import re

import pytest

from ringwright.api import create_app, static_app

STYLE = "body { margin: 0 }"
# By another tool: printf %s 'body { margin: 0 }' | openssl dgst -sha256 -binary | base64
STYLE_HASH = "mX+s7KJgWpgxJola85xdpAFPBQaV091gzM2oPjgTW2w="
SCRIPT = b"const ring = 'spring';\n" * 200


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    """A test client over a small built app."""
    tmp_path = tmp_path_factory.mktemp("app")
    assets = tmp_path / "assets"
    assets.mkdir()
    (tmp_path / "index.html").write_text(
        "<!doctype html><title>Ringwright</title><style>%s</style>" % STYLE
    )
    (tmp_path / "sw.js").write_bytes(SCRIPT)
    (tmp_path / "manifest.webmanifest").write_text("{}")
    (assets / "index-Ab3_x9Zk.js").write_bytes(SCRIPT)
    (assets / "index-Ab3_x9Zk.js.br").write_bytes(b"compressed by the build")
    (assets / "engine-DEADBEEF.wasm").write_bytes(b"\0asm" + bytes(1000))
    (assets / "plain.js").write_bytes(SCRIPT)
    return create_app(app_folder=tmp_path).test_client()


def test_the_page(built):
    response = built.get("/")
    assert response.mimetype == "text/html"
    assert response.headers["Cache-Control"] == "no-cache"
    policy = response.headers["Content-Security-Policy"]
    assert "script-src 'self' 'wasm-unsafe-eval';" in policy
    assert "style-src 'self' 'sha256-%s';" % STYLE_HASH in policy
    assert "unsafe-inline" not in policy
    assert "'unsafe-eval'" not in policy
    assert "http" not in policy
    # A job is taken in by the code that the camera sees; nothing else of the device is asked for.
    assert response.headers["Permissions-Policy"].split(", ")[0] == "camera=(self)"


@pytest.mark.parametrize(
    ("path", "kind", "kept"),
    [
        ("/assets/index-Ab3_x9Zk.js", "text/javascript", "public, max-age=31536000, immutable"),
        ("/assets/engine-DEADBEEF.wasm", "application/wasm", "public, max-age=31536000, immutable"),
        ("/assets/plain.js", "text/javascript", "no-cache"),
        ("/sw.js", "text/javascript", "no-cache"),
        ("/manifest.webmanifest", "application/manifest+json", "no-cache"),
        ("/index.html", "text/html", "no-cache"),
    ],
)
def test_what_may_be_kept(built, path, kind, kept):
    response = built.get(path)
    assert response.status_code == 200
    assert response.mimetype == kind
    assert response.headers["Cache-Control"] == kept
    assert response.headers["Vary"] == "Accept-Encoding"


@pytest.mark.parametrize(
    ("accepted", "sent"),
    [
        ("", None),
        ("identity", None),
        ("gzip", "gzip"),
        ("gzip, deflate, br", "br"),
        ("br;q=0, gzip", "gzip"),
        ("zstd", None),
    ],
)
def test_the_best_encoding_that_is_accepted(built, accepted, sent):
    response = built.get("/assets/index-Ab3_x9Zk.js", headers={"Accept-Encoding": accepted})
    assert response.headers.get("Content-Encoding") == sent
    content = {None: lambda b: b, "gzip": gzip.decompress, "br": lambda b: SCRIPT}[sent]
    assert content(response.data) == SCRIPT
    assert int(response.headers["Content-Length"]) == len(response.data)


def test_an_unchanged_file_costs_a_304_in_its_own_encoding(built):
    for accepted in ("", "gzip", "br"):
        headers = {"Accept-Encoding": accepted}
        tag = built.get("/sw.js", headers=headers).headers["ETag"]
        again = built.get("/sw.js", headers={**headers, "If-None-Match": tag})
        assert again.status_code == 304
        assert again.data == b""
    plain = built.get("/sw.js").headers["ETag"]
    other = built.get("/sw.js", headers={"If-None-Match": plain, "Accept-Encoding": "gzip"})
    assert other.status_code == 200


@pytest.mark.parametrize(
    "path", ["/nothing", "/assets/", "/assets/../../pyproject.toml", "/assets/index-Ab3_x9Zk.js.br"]
)
def test_nothing_else_is_there(built, path):
    assert built.get(path, headers={"Accept": "text/html"}).status_code == 404


def test_the_calculations_are_still_there(built):
    assert built.get("/v1/sizing?bore=80").status_code == 200
    assert built.get("/healthz").status_code == 200


def test_head(built):
    head = built.head("/sw.js")
    assert head.status_code == 200
    assert head.data == b""
    assert int(head.headers["Content-Length"]) == len(SCRIPT)


def sent_bytes(client, wanted=""):
    """What the service sends over https, where browsers take brotli, for the files of the built app
    whose path matches."""
    names = [path for path in static_app.FOLDER.rglob("*") if path.suffix not in (".gz", ".br")]
    files = [path.relative_to(static_app.FOLDER).as_posix() for path in names if path.is_file()]
    # What is handed on is not kept.
    files = [name for name in files if name != static_app.ONE_FILE and re.match(wanted, name)]
    assert len(files) >= 5, "the app is not built: service/build_app"
    sent = [client.get("/" + name, headers={"Accept-Encoding": "gzip, br"}) for name in files]
    assert {response.status_code for response in sent} == {200}
    return sum(len(response.data) for response in sent)


def test_what_a_phone_keeps_is_within_its_budget(client):
    """480 kB for everything, as it is sent."""
    assert 200_000 < sent_bytes(client) <= 480_000


def test_the_first_figures_are_within_their_budget(client):
    """300 kB for the page, its script, the engine and what of the core the first figures need."""
    needed = "index.html$|assets/(index-|worker-|micropython-|core-first-)"
    assert 200_000 < sent_bytes(client, needed) <= 300_000


def test_what_is_handed_on_is_saved_not_opened(client):
    response = client.get("/" + static_app.ONE_FILE)
    assert response.headers["Content-Disposition"] == 'attachment; filename="ringwright.html"'
