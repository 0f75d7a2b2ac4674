"""Plain words (ISO 24495-1): every word that a user reads, in one list, and what a machine sees.

The list is tests/out/words.txt, made anew each time, short enough to be read in one sitting. Only
a reader can tell whether it is plain. The rules here are common practice of plain writing.
"""

import re

import pytest

from conftest import ROOT
from house.words import gathered
from ringwright.core.calculations import CALCULATIONS

OUT = ROOT / "tests" / "out" / "words.txt"
# Words in a sentence; a number with its unit is one, the same in the other system none.
LONGEST = 25
# The card has steps of one movement that are longer; its own list of words judges them.
LONGEST_OF_CARD = 32
ASIDE = re.compile(r"\([^()]*(\([^()]*\)[^()]*)*\)")
NUMBER = re.compile(
    r"-?\d[\d ./,\u202f]*(\s?(%|mm|in|N/mm2|psi|degrees|C|F|g|kg|lb|oz|h|hours?))?(?!\w)"
)
SENTENCE = re.compile(r"(?<=[.!?:;])\s+")
# Lists of names to choose from are no sentences.
LISTED = re.compile(r"^(use|keep|leave|give) |^[\w-]+(, [\w-]+){4,}")
SYMBOL = re.compile(r"\b[A-Za-z]+_[A-Za-z0-9_]+\b|\b[A-Za-z]_?\d+/[A-Za-z]|\w\^")
# What nobody but its writer understands -> what says it.
RIDDLES = {
    "nothing stands against": "say what was looked at and found good",
    "cutting effort": "search for the cut list",
    "relief the heat gave": "stress that the soak took out",
    "relief that the heat gave": "stress that the soak took out",
    "before bar_": "which price goes first",
    "the window that serves": "sections that serve",
    "cannot be determined": "nobody knows",
    "utilise": "use",
    "in order to": "to",
    "prior to": "before",
}
# One word for one thing: the word that is used -> others for it that are not.
ONE_WORD = {
    "work out": ("reckon", "calculate the", "compute"),
    "spacer": ("spreader", "wedge piece"),
    "clamp mandrel": ("clamping mandrel", "expanding mandrel"),
    "closing ring": ("closing sleeve", "squeeze ring"),
    "slitting saw": ("slitting cutter", "slitting blade"),
    "feeler": ("feeler gauge", "thickness gauge"),
    "bridge": ("connecting piece",),
    "free gap": ("open gap", "gap at rest"),
    "closed gap": ("butt gap",),
    "radial thickness": ("wall thickness of the ring", "radial depth"),
    "steam chest": ("valve chest",),
}


@pytest.fixture(scope="module")
def words():
    found = gathered()
    OUT.parent.mkdir(exist_ok=True)
    text = "\n\n".join(place.upper() + "\n\n" + "\n".join(said) for place, said in found.items())
    OUT.write_text(text + "\n", encoding="utf-8")
    return [(place, said) for place, texts in found.items() for said in texts]


def test_the_list_holds_every_kind_of_word_and_can_be_read_in_one_sitting(words):
    places = {place for place, _ in words}
    assert places >= {
        *("card", "cautions", "checks", "figures", "inputs", "findings and choices"),
        *("remedies", "refusals", "app: screens", "app: shell", "app: figures"),
    }
    assert len(words) > 1200
    # At 200 words a minute, two hours.
    assert len(OUT.read_text(encoding="utf-8").split()) < 24000


def test_no_sentence_is_too_long_to_follow(words):
    long = []
    for place, said in words:
        if LISTED.match(said):
            continue
        most = LONGEST_OF_CARD if place == "card" else LONGEST
        for sentence in SENTENCE.split(ASIDE.sub("", said)):
            count = len(NUMBER.sub(" 0 ", sentence).split())
            if count > most and not LISTED.match(sentence):
                long.append((count, place, sentence))
    assert long == []


def test_no_raw_symbol_stands_among_words(words):
    """A name of an input is set as its label by the app (labels.ts); any other is a riddle."""
    named = set()

    def walk(fields):
        for field in fields:
            named.add(field.name)
            walk(field.items)

    for calculation in CALCULATIONS.values():
        walk(calculation.fields)
    raw = [
        (place, said, found)
        for place, said in words
        for found in SYMBOL.findall(said)
        if found not in named
    ]
    assert raw == []


def test_no_riddle_is_left(words):
    left = [(place, said) for place, said in words for riddle in RIDDLES if riddle in said.lower()]
    assert left == []


def test_one_word_for_one_thing(words):
    others = [(used, other) for used, row in ONE_WORD.items() for other in row]
    found = [
        (used, place, said)
        for place, said in words
        for used, other in others
        if re.search(r"\b%s" % re.escape(other), said.lower())
    ]
    assert found == []


@pytest.mark.parametrize(
    "said, faulty",
    [("4 U_2 is the ovality", True), ("m_r/m", True), ("80 mm (3.15 in) wide, 7 % over", False)],
)
def test_the_rule_of_symbols_sees_what_it_is_for(said, faulty):
    assert bool(SYMBOL.search(said)) is faulty
