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

    proxy = (root / "docker" / "Caddyfile").read_text(encoding="utf-8")
    least = re.search(r"Content-Length \^\(\[(\d)-9\]\[0-9\]\{(\d)\}", proxy)
    assert int(least[1]) * 10 ** int(least[2]) > limits.LARGEST_BODY
    line = int(
        re.search(
            r"limit_request_line = (\d+)",
            (root / "docker" / "gunicorn.conf.py").read_text(encoding="utf-8"),
        )[1]
    )
    assert line > limits.LONGEST_QUERY + 500


def test_there_is_one_proxy_and_no_log_of_what_is_asked(root):
    proxy = (root / "docker" / "Caddyfile").read_text(encoding="utf-8")
    assert not re.search(r"^\s*log\b", proxy, re.MULTILINE)
    assert "nginx" not in (root / "docker" / "compose.yaml").read_text(encoding="utf-8")


def test_what_a_builder_has_does_not_reach_the_image(root):
    ignored = (root / "docker" / "Dockerfile.dockerignore").read_text(encoding="utf-8").split()
    assert ignored[ignored.index("*") :] and "client_pwa/node_modules" in ignored
    copied = re.findall(
        r"^COPY (?!--from)([^\n]+)", (root / "docker" / "Dockerfile").read_text(), re.M
    )
    for line in copied:
        for path in line.split()[:-1]:
            assert "!" + path.split("/")[0] in ignored, path
