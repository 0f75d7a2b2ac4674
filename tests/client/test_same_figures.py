"""One core, two engines: the phone's worker and the service answer every request alike.

Numbers are equal to 1e-12 relative, words letter for letter. The requests are those of vectors/;
what is right in itself is for the tests of the core to say.
"""

import ast
import json

import pytest

from client.conftest import APP, Sheet
from conftest import ROOT
from ringwright.core.calculations import CALCULATIONS

VECTORS = json.loads((ROOT / "tests" / "vectors" / "requests.json").read_text(encoding="utf-8"))
RELATIVE = 1e-12
# Below this a difference of two large lengths is rounding and nothing else [mm, N, MPa].
ABSOLUTE = 1e-12

ENGINE = """parts => new Promise((resolve, reject) => {
    const worker = new Worker(parts.worker);
    worker.onerror = event => reject(new Error(event.message));
    const waiting = new Map();
    worker.onmessage = ({ data }) => {
        if (data.kind === 'ready') resolve();
        else if (data.kind === 'failed') reject(new Error(data.error.message));
        else waiting.get(data.ticket)?.(data);
    };
    let tickets = 0;
    window.work = (name, text) => new Promise(done => {
        waiting.set(++tickets, done);
        worker.postMessage({ kind: 'work', ticket: tickets, name, text });
    });
    worker.postMessage({ kind: 'start', parts: { kind: 'beside', ...parts } });
})"""


def _built(pattern):
    (found,) = (APP / "assets").glob(pattern)
    return found.name


@pytest.fixture(scope="module")
def engine(browser, served):
    """A function of calculation and request: what the worker of the built app says, as a dict."""
    context = browser.new_context()
    page = context.new_page()
    Sheet(page, served).open()
    parts = {
        name: served + "/assets/" + _built(pattern)
        for name, pattern in (
            ("worker", "worker-*.js"),
            ("first", "core-first-*.bin"),
            ("rest", "core-rest-*.bin"),
            ("wasm", "micropython-*.wasm"),
        )
    }
    page.evaluate(ENGINE, parts)

    def work(name, request):
        told = page.evaluate(
            "([name, text]) => window.work(name, text)", [name, json.dumps(request)]
        )
        assert told["kind"] == "answer", told
        return json.loads(told["text"])

    yield work
    context.close()


def _differences(one, other, path=""):
    if isinstance(one, bool) or isinstance(other, bool) or one is None or isinstance(one, str):
        if one != other:
            yield "%s: %r and %r" % (path, one, other)
    elif isinstance(one, int | float) and isinstance(other, int | float):
        if abs(one - other) > max(ABSOLUTE, RELATIVE * max(abs(one), abs(other))):
            yield "%s: %r and %r" % (path, one, other)
    elif isinstance(one, dict) and isinstance(other, dict):
        # The order of figures is read by people; that of a figure's own parts is not.
        ordered = list if path.endswith("/figures") else sorted
        if ordered(one) != ordered(other):
            yield "%s: %s and %s" % (path, list(one), list(other))
        else:
            for key in one:
                yield from _differences(one[key], other[key], path + "/" + key)
    elif isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        for index, pair in enumerate(zip(one, other, strict=True)):
            yield from _differences(*pair, "%s/%d" % (path, index))
    else:
        yield "%s: %r and %r" % (path, one, other)


@pytest.mark.parametrize("vector", VECTORS, ids=[each["name"] for each in VECTORS])
def test_phone_and_service_say_the_same(engine, client, vector):
    name, request = vector["calculation"], vector["request"]
    phone = engine(name, request)
    if CALCULATIONS[name].fields:
        # The service asks once for the units of numbers and of drawings.
        system = request.get("dimensions", "metric")
        body = {key: value for key, value in request.items() if key != "dimensions"}
        reply = client.post("/v1/%s?working=true&units=%s" % (name, system), json=body)
    else:
        reply = client.get("/v1/%s" % name)
    if "problem" in phone:
        assert vector["name"].startswith("bad:"), phone
        assert reply.status_code == 422
        words = [
            (fault["path"], fault["code"], fault["message"], fault["remedy"])
            for fault in phone["problem"]["faults"]
        ]
        told = [
            (fault["path"], fault["code"], fault["message"], fault["remedy"])
            for fault in reply.get_json()["errors"]
        ]
        assert words == told
        return
    assert not vector["name"].startswith("bad:"), "this was to be refused"
    assert reply.status_code == 200, reply.get_data(as_text=True)
    found = list(_differences(phone["answer"], json.loads(reply.get_data(as_text=True))))
    assert found == []


def test_vectors_cover_both_rings_and_every_calculation():
    assert len(VECTORS) >= 60
    assert {vector["calculation"] for vector in VECTORS} >= set(CALCULATIONS)
    assert {vector["request"].get("ring_type") for vector in VECTORS} >= {"plain", "double-turn"}
    assert sum(vector["name"].startswith("bad:") for vector in VECTORS) >= 15


def _bare(source):
    """The syntax tree without docstrings, and without a pass that stood for one."""
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.FunctionDef | ast.ClassDef):
            first = node.body[0] if node.body else None
            if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant):
                node.body = node.body[1:]
            node.body = [part for part in node.body if not isinstance(part, ast.Pass)]
    return ast.dump(tree)


def _unpacked(data):
    """Name -> source of the files of a bundle, unpacked as the worker does."""
    words, _, coded = data.partition(b"\0")
    words = words.decode("ascii").split("\n")
    plain = {10, *range(32, 127)}
    codes = [byte for byte in range(1, 256) if byte not in plain]
    singles = codes[:-14]
    pairs = codes[-14:]
    text, at = [], 0
    while at < len(coded):
        byte = coded[at]
        if byte in plain:
            text.append(chr(byte))
        elif byte in singles:
            text.append(words[singles.index(byte)])
        else:
            at += 1
            text.append(words[len(singles) + pairs.index(byte) * 94 + coded[at] - 33])
        at += 1
    return dict(
        (part + "\n").split("\n", 1)
        for part in ("\n" + "".join(text)).rstrip("\n").split("\n#")[1:]
    )


def test_the_phone_runs_the_core_itself(browser, served):
    """Unpacked as the worker does, every file of the app is the core's, but for its comments."""
    files = {}
    for bundle in ("core-first-*.bin", "core-rest-*.bin"):
        files.update(_unpacked((APP / "assets" / _built(bundle)).read_bytes()))
    core = ROOT / "service" / "ringwright" / "core"
    ours = {
        "ringwright/core/" + path.relative_to(core).as_posix(): path for path in core.rglob("*.py")
    }
    assert set(files) == {*ours, "ringwright/__init__.py"}
    for name, path in ours.items():
        assert _bare(files[name]) == _bare(path.read_text(encoding="utf-8")), name
