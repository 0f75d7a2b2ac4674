"""Every variable of the environment that anything here reads stands in one table of the README."""

import re

from ringwright.api.settings import BESIDE, SETTINGS

# What is set in the container's own image and steers Python, not us.
OF_PYTHON = {"PYTHONUNBUFFERED", "PYTHONDONTWRITEBYTECODE"}


def rows_of(page):
    """(variable, default, meaning) of each row below the heading Settings."""
    part = page.partition("\n## Settings\n")[2].partition("\n## ")[0]
    return re.findall(r"^\| `([A-Z_]+)` \| `?([^`|]*?)`? \| (.+) \|$", part, re.M)


def variables_read(root):
    """Names of the variables that the project's own programs and files read or set."""
    found = set()
    files = [
        path
        for folder in ("service", "docker")
        for path in sorted((root / folder).rglob("*"))
        if path.is_file()
        and path.suffix in ("", ".py", ".yaml", ".service")
        and "ringwright/app" not in path.as_posix()
        and "ringwright/renderer" not in path.as_posix()
        and path.name != "settings.py"
    ]
    assert len(files) > 200
    for path in files:
        text = path.read_text(encoding="utf-8")
        # By our own prefix wherever it stands, and whatever else is asked of the environment.
        found |= set(re.findall(r"\b(RINGWRIGHT_[A-Z_]+[A-Z])\b", text))
        found |= set(re.findall(r"\bos\.(?:environ(?:\.get\(|\[)|getenv\()\"([A-Z_]+)\"", text))
        # Of the server's own, those that its file names; of compose and systemd, those they set.
        found |= set(re.findall(r"\b(GUNICORN_[A-Z_]+)\b", text))
        if path.suffix == ".yaml":
            found |= set(re.findall(r"^      ([A-Z_]+): ", text, re.M))
    return found - OF_PYTHON


def test_the_table_names_every_variable_and_no_other(root):
    rows = rows_of((root / "README.md").read_text(encoding="utf-8"))
    names = [name for name, _, _ in rows]
    assert len(names) == len(set(names)) > 10
    assert set(names) == variables_read(root)


def test_the_table_says_what_the_code_says(root):
    rows = rows_of((root / "README.md").read_text(encoding="utf-8"))
    declared = {**SETTINGS, **BESIDE}
    wanted = [(name, setting.usual, setting.meaning) for name, setting in declared.items()]
    assert rows == wanted, "the table should be:\n" + "\n".join(
        "| `%s` | %s | %s |" % (name, "`%s`" % usual if usual else "", meaning)
        for name, usual, meaning in wanted
    )


def test_the_page_for_a_club_s_server_says_what_the_code_says(root):
    page = (root / "docker" / "README.md").read_text(encoding="utf-8")
    rows = re.findall(r"^\| `([A-Z_]+)` \| `?([^`|]*?)`? \| (.+) \|$", page, re.M)
    declared = {**SETTINGS, **BESIDE}
    assert len(rows) >= 9
    for name, usual, meaning in rows:
        assert (usual, meaning) == (declared[name].usual, declared[name].meaning), name


def test_defaults_beside_the_service_are_those_that_are_taken(root):
    """Where the default stands in a file of another kind than the table's."""
    front = (root / "docker" / "Caddyfile").read_text(encoding="utf-8")
    taken = dict(re.findall(r"\{\$(RINGWRIGHT_[A-Z_]+):([^}]+)\}", front))
    assert len(taken) >= 3
    assert taken == {name: BESIDE[name].usual for name in taken}
    server = (root / "docker" / "gunicorn.conf.py").read_text(encoding="utf-8")
    assert 'environ.get("WEB_CONCURRENCY", "0")) or min(4, os.cpu_count() or 1)' in server
