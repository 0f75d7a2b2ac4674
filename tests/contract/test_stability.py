"""The promise of stability: what version 1.0.0 named is there today, and means the same."""

import json

import pytest

from contract.promise import promised
from ringwright import __version__

ADDRESS = "/v1/sizing?bore=80"


@pytest.fixture(scope="module")
def stored(root):
    return json.loads((root / "tests/vectors/promised_1.0.0.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def today():
    # As it comes back from JSON, so that both sides are alike.
    return json.loads(json.dumps(promised()))


def broken(before, after):
    """What of `before` is gone or has another meaning in `after`, as words."""
    found = _inputs_broken(before["inputs"], after["inputs"], "")
    for name, one in before["calculations"].items():
        now = after["calculations"].get(name)
        if now is None:
            found.append(name)
            continue
        found += ["%s: input %s" % (name, gone) for gone in _gone(one["inputs"], now["inputs"])]
        found += ["%s: needs %s" % (name, new) for new in _gone(now["required"], one["required"])]
        found += _answer_broken(one, now, name)
    found += ["check " + gone for gone in _gone(before["checks"], after["checks"])]
    found += ["address " + gone for gone in _gone(before["addresses"], after["addresses"])]
    for code, status in before["problems"].items():
        if after["problems"].get(code) != status:
            found.append("problem " + code)
    return found


def _gone(before, after):
    return sorted(set(before) - set(after))


def _answer_broken(before, after, where):
    found = ["%s: list %s" % (where, gone) for gone in _gone(before["lists"], after["lists"])]
    for name, unit in before["figures"].items():
        if after["figures"].get(name) != unit:
            found.append("%s: figure %s" % (where, name))
    found += ["%s: always %s" % (where, gone) for gone in _gone(before["always"], after["always"])]
    for name, part in before["parts"].items():
        if name not in after["parts"]:
            found.append("%s: part %s" % (where, name))
        else:
            found += _answer_broken(part, after["parts"][name], "%s.%s" % (where, name))
    return found


def _inputs_broken(before, after, where):
    found = []
    for name, one in before.items():
        now = after.get(name)
        place = where + name
        if now is None or (one["kind"], one["unit"]) != (now["kind"], now["unit"]):
            found.append("input " + place)
            continue
        if now["required"] and not one["required"]:
            found.append("needs " + place)
        if _gone(one["choices"], now["choices"]):
            found.append("choices of " + place)
        if _drawn_in(one["lowest"], now["lowest"], 1) or _drawn_in(
            one["highest"], now["highest"], -1
        ):
            found.append("bounds of " + place)
        found += _inputs_broken(one["items"], now["items"], place + ".")
    found += [
        "needs " + where + new for new in _gone(after, before) if where and after[new]["required"]
    ]
    return found


def _drawn_in(before, now, side):
    if now is None:
        return False
    return before is None or side * (now - before) > 0


def test_nothing_promised_is_gone(stored, today):
    assert broken(stored, today) == []


def test_there_is_much_that_is_promised(stored):
    assert len(stored["inputs"]) > 125
    assert len(stored["checks"]) > 60
    assert sum(len(one["figures"]) for one in stored["calculations"].values()) > 150


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda now: now["inputs"].pop("bore"), "input bore"),
        (lambda now: now["inputs"]["bore"].update(unit="in"), "input bore"),
        (lambda now: now["inputs"]["bore"].update(highest=800.0), "bounds of bore"),
        (lambda now: now["inputs"]["modulus"].update(required=True), "needs modulus"),
        (lambda now: now["inputs"]["end_cut"]["choices"].remove("square"), "choices of end_cut"),
        (
            lambda now: now["inputs"]["readings"]["items"]["diameter"].update(kind="angle"),
            "input readings.diameter",
        ),
        (
            lambda now: now["calculations"]["sizing"]["figures"].pop("free_gap"),
            "sizing: figure free_gap",
        ),
        (
            lambda now: now["calculations"]["sizing"]["always"].remove("free_gap"),
            "sizing: always free_gap",
        ),
        (
            lambda now: now["calculations"]["running"]["required"].append("speed"),
            "running: needs speed",
        ),
        (lambda now: now["checks"].remove("closed-stress"), "check closed-stress"),
        (lambda now: now["problems"].update({"not-found": 410}), "problem not-found"),
        (lambda now: now["addresses"].remove("GET /v1/sizing"), "address GET /v1/sizing"),
    ],
)
def test_a_broken_promise_is_seen(stored, change, said):
    now = json.loads(json.dumps(stored))
    change(now)
    assert said in broken(stored, now)
    # The other way about it is an addition, which is allowed, or a wider bound.
    if said.startswith(("check", "address", "sizing: figure")):
        assert said not in broken(now, stored)


@pytest.mark.parametrize(
    ("path", "status"),
    [
        (ADDRESS, 200),
        ("/v1/sizing?bore=x", 422),
        ("/v1/nothing", 404),
        ("/healthz", 200),
        ("/openapi.json", 200),
        ("/v1/drawings/blank.svg?bore=80", 200),
        ("/v1/sizing.csv?bore=80", 200),
        ("/", 200),
    ],
)
def test_every_answer_says_its_version(client, path, status):
    response = client.get(path)
    assert response.status_code == status
    assert response.headers.getlist("Ringwright-Version") == [__version__]
    # A page of another address may read it.
    assert "Ringwright-Version" in response.headers["Access-Control-Expose-Headers"]


def test_an_answer_that_is_kept_says_it_too(client):
    tag = client.get(ADDRESS).headers["ETag"]
    response = client.get(ADDRESS, headers={"If-None-Match": tag})
    assert response.status_code == 304
    assert response.headers["Ringwright-Version"] == __version__


def test_version_promise_and_changelog_go_together(client, root):
    spec = client.get("/openapi.json").get_json()
    assert spec["info"]["version"] == __version__
    assert "From version 1.0.0 on" in spec["info"]["description"]
    assert "Ringwright-Version" in spec["info"]["description"]
    assert "version %s" % __version__ in (root / "openapi/CHANGELOG.md").read_text(encoding="utf-8")
