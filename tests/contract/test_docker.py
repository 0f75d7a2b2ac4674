"""What goes into the container fits what the project says it needs."""

import re
import tomllib

import pytest


@pytest.fixture(scope="module")
def lock(root):
    """Name -> pinned version, from the lock file."""
    text = (root / "docker" / "requirements.lock").read_text(encoding="utf-8")
    assert "://" not in text, "the lock names a host"
    pins = re.findall(r"^([A-Za-z0-9_.-]+)==([^ \\;]+)", text, re.MULTILINE)
    assert text.count("--hash=sha256:") > len(pins)
    return {name.lower().replace("_", "-"): version for name, version in pins}


def test_every_package_is_locked_within_its_bounds(lock, root):
    project = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    for wanted in project["dependencies"]:
        name = re.match("[A-Za-z0-9_.-]+", wanted)[0].lower()
        assert name in lock, "%s is missing: compile docker/requirements.lock anew" % name
        lowest = re.search(r">=([0-9.]+)", wanted)[1]
        assert _numbers(lock[name]) >= _numbers(lowest)
        highest = re.search(r"<([0-9.]+)", wanted)
        if highest:
            assert _numbers(lock[name]) < _numbers(highest[1])


def _numbers(version):
    return [int(part) for part in re.findall("[0-9]+", version)]


def test_the_proxy_lets_the_services_own_limits_speak(root):
    from ringwright.api import limits

    proxy = (root / "docker" / "nginx.conf").read_text(encoding="utf-8")
    megabytes = int(re.search(r"client_max_body_size (\d+)m;", proxy)[1])
    assert megabytes * 1_000_000 > limits.LARGEST_BODY
    line = int(
        re.search(
            r"limit_request_line = (\d+)",
            (root / "docker" / "gunicorn.conf.py").read_text(encoding="utf-8"),
        )[1]
    )
    assert line > limits.LONGEST_QUERY + 500


def test_a_kept_answer_reaches_only_those_who_came_by_the_same_address(root):
    """The card's code says the address asked; a cache that forgot it would hand on another's."""
    proxy = (root / "docker" / "nginx.conf").read_text(encoding="utf-8")
    key = re.search(r"proxy_cache_key (\S+);", proxy)[1]
    assert {"$outer_scheme", "$http_host", "$request_uri"} == set(re.findall(r"\$\w+", key))
    assert "proxy_set_header X-Forwarded-Proto $outer_scheme;" in proxy
    # nginx: $host leaves the port out, which the link needs.
    assert "proxy_set_header Host $http_host;" in proxy
