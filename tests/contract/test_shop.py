"""The club's workshop: one file named by a setting, offered as it is, or no start at all."""

import json

import pytest

from ringwright.api import create_app
from ringwright.api.shop import FORMAT, SETTING, BadProfile, read_profile

PROFILE = {
    "format": FORMAT,
    "version": 1,
    "name": "Fernhollow Steam Club",
    "lathes": [{"name": "long bed", "machine": "rigid", "spindle_speeds": ["48", "110", "230"]}],
    "lathe": 0,
    "shelf": {"shelf_former": ["77.4 mm"]},
    "inputs": {"end_kerf": "0.8 mm", "bars": [{"diameter": "90 mm", "length": "400 mm"}]},
}


def _named(tmp_path, content):
    path = tmp_path / "shop.json"
    path.write_text(content if isinstance(content, str) else json.dumps(content))
    return str(path)


def test_profile_is_offered_as_it_is(tmp_path, monkeypatch):
    monkeypatch.setenv(SETTING, _named(tmp_path, PROFILE))
    answer = create_app().test_client().get("/v1/shop")
    assert answer.status_code == 200
    assert answer.get_json() == PROFILE
    assert answer.headers["Cache-Control"] == "no-cache"


def test_service_without_one_says_so(monkeypatch):
    monkeypatch.delenv(SETTING, raising=False)
    answer = create_app().test_client().get("/v1/shop")
    assert answer.status_code == 404
    assert answer.mimetype == "application/problem+json"
    assert "no workshop of a club" in answer.get_json()["detail"]


@pytest.mark.parametrize(
    "content, words",
    [
        ("not json", "not JSON"),
        ("[]", '"format"'),
        ({"format": "ringwright-job", "version": 3}, '"format"'),
        ({"format": FORMAT, "version": 9}, "version 9"),
        ('{"format": "ringwright-shop", "version": 1, "name": "%s"}' % ("x" * 400_000), "larger"),
    ],
)
def test_file_that_cannot_be_offered_keeps_the_service_from_starting(tmp_path, content, words):
    with pytest.raises(BadProfile, match=SETTING) as caught:
        read_profile({SETTING: _named(tmp_path, content)})
    assert words in str(caught.value)


def test_file_that_is_not_there_is_named():
    with pytest.raises(BadProfile, match="/no/such/file"):
        read_profile({SETTING: "/no/such/file"})
