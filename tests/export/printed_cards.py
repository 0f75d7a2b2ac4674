"""Prints two whole route cards into the documentation, in millimetres and inches side by side.

    PYTHONPATH=service:tests python -m export.printed_cards

writes the pages afresh from what the service answers; test_printed_cards.py holds them to it.
"""

from pathlib import Path

from ringwright.api.app import create_app
from ringwright.export import card_sizes, values

_DOCS = Path(__file__).parents[2] / "client_pwa" / "docs"
# Page -> its title, and the job as it is asked.
CARDS = {
    _DOCS / "card-double-turn.md": (
        "A route card: double-turn ring for a bore of 3 1/8 in",
        {"bore": "3 1/8 in", "steam_pressure": "120 psi", "inch_sizes": True},
    ),
    _DOCS / "card-plain.md": (
        "A route card: plain ring for a bore of 150 mm",
        {"bore": "150 mm", "ring_type": "plain"},
    ),
}
_HEAD = """\
What the service answers for %s, all else chosen by it. A script writes this page
and a test holds it to the service. App and PDF have the same card with pictures, and a place for
what each ring measured.
"""
_SYSTEMS = ("metric", "inch")


def page(title, job, client):
    """The text of one page. client: a test client of the service."""
    card = client.post("/v1/route", json=job).get_json()
    asked = ", ".join(
        "%s %s" % (name.replace("_", " "), "yes" if text is True else text)
        for name, text in job.items()
    )
    lines = ["# " + title, "", _HEAD % asked]
    lines += [_finding(one) + "\n" for one in card["findings"]]
    said = set()
    for row in card["operations"]:
        lines += _operation(row, said)
    return "\n".join(lines).rstrip() + "\n"


def _finding(one):
    said = "**%s:** %s %s" % (one["outcome"].capitalize(), one["why"], one["remedy"])
    return said.rstrip()


def _operation(row, said):
    lines = ["## %d. %s" % (row["number"], row["title"]), "", row["text"], ""]
    lines.append("- **Hold:** " + row["hold"])
    lines.append("- **Tool:** " + row["tool"])
    cut = _cut(row)
    if cut:
        lines.append("- " + cut)
    lines.append("- **Check:** " + row["check"])
    for caution in row["cautions"]:
        if caution["key"] in said:
            lines.append("- **Beware, as before:** %s." % caution["key"].replace("-", " "))
        else:
            said.add(caution["key"])
            lines.append("- **Beware:** " + caution["text"])
    if row["sizes"]:
        lines += [
            "",
            "| size | make it, mm | make it, in | taken by |",
            "| --- | --- | --- | --- |",
        ]
        lines += [_size(size) for size in row["sizes"]]
    return [*lines, ""]


def _cut(row):
    parts = []
    if row.get("speed"):
        surface = [_of(row["surface_speed"], system) for system in _SYSTEMS]
        parts.append("**Speed:** %s (%s, %s)" % (_of(row["speed"], "metric"), *surface))
        feed = [_of(row["feed"], system) for system in _SYSTEMS]
        parts.append("**feed:** %s (%s) a %s" % (*feed, row["feed_per"]))
        parts.append("**passes:** %d" % row["passes"])
    if row.get("time"):
        each = " a ring" if row["each_ring"] else ""
        minutes = values.shown(row["time"]["value"], "min", "metric", 0)
        parts.append("**about** " + minutes + each)
    return ", ".join(parts)


def _of(quantity, system):
    return values.shown(quantity["value"], quantity["unit"], system)


def _size(size):
    made = [_make(size, system) for system in _SYSTEMS]
    return "| %s | %s | %s | %s |" % (size["label"], *made, size["reading"])


def _make(size, system):
    if "limits" not in size:
        return card_sizes.alone(size, system)
    ends = [size["limits"][end]["value"] for end in ("lower", "upper")]
    upper, lower, unit = values.limits(*ends, system)
    if card_sizes.has_aim(size):
        return "%s, %s to %s %s" % (_of(size, system), lower, upper, unit)
    return "%s to %s %s" % (lower, upper, unit)


def pages():
    """Path -> text of every page, as the service answers now."""
    client = create_app().test_client()
    return {path: page(title, job, client) for path, (title, job) in CARDS.items()}


if __name__ == "__main__":
    for path, text in pages().items():
        path.write_text(text, encoding="utf-8")
