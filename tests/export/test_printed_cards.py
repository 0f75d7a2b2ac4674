"""The two route cards in the documentation are those that the service gives, read against the
list of what a card must tell."""

import re
from pathlib import Path

import pytest

from core.test_every_word import LIST
from export import printed_cards

TOP = Path(__file__).parents[2]
LIMITS = r"\| .+ \| ([\d.]+) to ([\d.]+) mm \| ([\d.]+) to ([\d.]+) in \| .+"


@pytest.fixture(scope="module")
def fresh():
    return printed_cards.pages()


@pytest.mark.parametrize("path", printed_cards.CARDS, ids=lambda path: path.name)
def test_the_page_is_what_the_service_answers(fresh, path):
    assert path.read_text(encoding="utf-8") == fresh[path], (
        path.name + " is stale: run PYTHONPATH=service:tests python -m export.printed_cards"
    )
    assert str(path.relative_to(TOP)) in (TOP / "README.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("path", printed_cards.CARDS, ids=lambda path: path.name)
def test_every_operation_of_the_page_tells_what_the_list_asks(client, path):
    """How it is held, with what, what to check; a size in both units; a limit; what to beware."""
    job = printed_cards.CARDS[path][1]
    keys = [row["key"] for row in client.post("/v1/route", json=job).get_json()["operations"]]
    parts = re.split(r"^## \d+\. ", path.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]
    assert len(parts) == len(keys)
    for key, part in zip(keys, parts, strict=True):
        must = LIST[key]
        for word in ("**Hold:**", "**Tool:**", "**Check:**"):
            assert word in part, (key, word)
        assert ("**Beware" in part) or "b" not in must, key
        sizes = re.findall(r"^\| (?!size |---)(.+) \|$", part, flags=re.MULTILINE)
        assert sizes or "s" not in must, key
        for size in sizes:
            label, metric, inch, reading = size.split(" | ")
            assert label and reading, (key, size)
            if metric.endswith(" mm"):
                assert inch.endswith(" in"), (key, size)
        assert any(" to " in size for size in sizes) or "l" not in must, key


@pytest.mark.parametrize("path", printed_cards.CARDS, ids=lambda path: path.name)
def test_millimetres_and_inches_of_the_page_are_the_same_size(path):
    """One inch is 25.4 mm; limits are rounded inwards, to 0.001 mm and to 0.0001 in."""
    compared = 0
    for line in path.read_text(encoding="utf-8").splitlines():
        found = re.fullmatch(LIMITS, line)
        if found:
            low, high, low_inch, high_inch = map(float, found.groups())
            assert low_inch * 25.4 == pytest.approx(low, abs=0.0037)
            assert high_inch * 25.4 == pytest.approx(high, abs=0.0037)
            compared += 1
    assert compared >= 12


@pytest.mark.parametrize("path", printed_cards.CARDS, ids=lambda path: path.name)
def test_times_of_the_page_say_whether_they_are_for_one_ring(client, path):
    """A bar is roughed as a whole, and its minutes are those of one ring of it: said at each."""
    job = printed_cards.CARDS[path][1]
    card = client.post("/v1/route", json=job).get_json()
    told = re.findall(r"\*\*about\*\* (\d+) min( a ring)?$", path.read_text("utf-8"), re.MULTILINE)
    rows = [row for row in card["operations"] if "time" in row]
    assert [bool(ring) for _, ring in told] == [row["each_ring"] for row in rows]
    # The whole to half a minute a row.
    first = card["figures"]["time_first_ring"]["value"]
    assert sum(int(minutes) for minutes, _ in told) == pytest.approx(first, abs=0.5 * len(rows))
