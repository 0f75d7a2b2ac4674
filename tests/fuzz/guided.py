"""Texts of quantities made up from those that reached something new of the reader:

    PYTHONPATH=service:tests python tests/fuzz/guided.py --seconds 600

A text is changed by pieces of the grammar, and kept when it reaches what none before did: a part of
the expression of its kind, another reason to refuse, other lines. Whatever is made up must be read
as openapi/quantity.lark has it, by a general parser and factors that are not ours, or be refused
with words, in a moment. It ends at the first text that is not. New texts go into corpus.json, which
the tests read with both readers.
"""

import argparse
import json
import math
import random
import sys
import time
import zlib
from functools import cache
from pathlib import Path

from contract import quantity_texts
from fuzz.seen import seen
from ringwright import units
from ringwright.units import grammar, reader

CORPUS = Path(__file__).parent / "corpus.json"
KINDS = sorted(quantity_texts.FACTORS)
# Most processor time that a text may take to be read or refused [s]: a thousand times the usual.
PATIENCE = 0.25
FIRST = [(kind, text) for kind in KINDS for text in ("1", "2.5", "1/8", "7 %s" % kind)]
# Of what is refused the general parser, which takes its time, judges one in so many.
JUDGED = 10
READ = "read"


def wrong(kind, text, judged=JUDGED):
    """What is wrong with how the service reads a text, None where nothing is."""
    began = time.process_time()
    try:
        got = units.read(kind, text)
    except units.UnitProblem as problem:
        got = None
        if not all((problem.code, problem.message, problem.remedy)):
            return "refused without words"
    except (ArithmeticError, LookupError, TypeError, ValueError) as error:
        return "raised %r" % error
    if time.process_time() - began > PATIENCE:
        return "took too long"
    if got is not None and not math.isfinite(got):
        return "read as %r" % got
    if got is None and zlib.crc32(repr((kind, text)).encode()) % judged:
        return None
    # The radian's factor is no fraction: the table of units says it to more digits than a double.
    expected = got if "rad" in text else quantity_texts.value(kind, text)
    return None if got == expected else "read as %r, is %r" % (got, expected)


def reached(kind, text):
    """What a text reaches: parts of the expression, reason of a refusal, lines of the reader."""
    lines = set()

    def watch(frame, event, _):
        if frame.f_code.co_filename != reader.__file__:
            return None
        lines.add((frame.f_code.co_name, frame.f_lineno, event))
        return watch

    before = sys.gettrace()
    sys.settrace(watch)
    try:
        units.read(kind, text)
        lines.add(READ)
    except units.UnitProblem as problem:
        lines.add(problem.code)
    except (ArithmeticError, LookupError, TypeError, ValueError):
        lines.add("raised")
    finally:
        sys.settrace(before)
    found = {(kind, each) for each in lines}
    if len(text) <= grammar.LONGEST_MEASURE:
        found |= {(kind, each) for each in seen(grammar.pattern(kind)[1:-1], text)[1]}
    return found


@cache
def pieces(kind):
    """What a text may be changed by, in groups of which each is as likely: spellings of units,
    marks, digits, numbers near the bounds of the grammar, spaces, fractions of one letter.
    """
    return (
        list(quantity_texts.spellings(kind)) or ["mm"],
        list(".,/-+eE\u2212\u2044'\"\u2033\u00b0\u00b5%\t\u0663x"),
        list("0123456789"),
        ["12", "121", "250", "000", "1/8", "3 1/8", "1-1/2", "1e3", "e-99", "123456", "9" * 18],
        list(" \u00a0\u202f\u2009") + ["  "],
        list(grammar.VULGAR),
    )


def changed(kind, text, other, dice):
    """A text by chance from one that is known. other: a text of which a piece may be taken."""
    for _ in range(dice.choice((1, 1, 1, 2, 2, 3))):
        at, to = sorted(dice.choices(range(len(text) + 1), k=2))
        piece = dice.choice(dice.choice(pieces(kind)))
        way = dice.randrange(9)
        digits = [place for place, letter in enumerate(text) if letter.isdigit()]
        if way == 0:
            text = text[:at] + text[to:]
        elif way == 1:
            text = text[:to] + text[at:]
        elif way == 2:
            text = text[:at] + other[dice.randrange(len(other) + 1) :]
        elif way in (3, 4):
            text = text[:at] + piece + text[at + 1 :]
        elif way in (5, 6) and digits:
            place = dice.choice(digits)
            text = text[:place] + dice.choice("001259") + text[place + (way == 5) :]
        else:
            text = text[:at] + piece + text[at:]
    return text[:60]


class Fuzzer:
    """Goes on from texts. guided: else any letters by chance, for comparison."""

    def __init__(self, texts, seed, kinds=KINDS, guided=True):
        self.dice = random.Random(seed)
        self.kinds = kinds
        self.guided = guided
        self.tried = 0
        self.known = set()
        self.corpus = {kind: [] for kind in kinds}
        # Of these texts those that are quantities.
        self.read = {kind: [] for kind in kinds}
        for kind, text in texts:
            if kind in self.corpus:
                self.keep(kind, text)

    def keep(self, kind, text):
        """Keeps a text that reaches what none before did."""
        found = reached(kind, text)
        if found <= self.known:
            return
        self.known |= found
        self.corpus[kind].append(text)
        if (kind, READ) in found:
            self.read[kind].append(text)

    def texts(self):
        return [(kind, text) for kind in self.kinds for text in self.corpus[kind]]

    def next(self):
        """Another text of some kind."""
        self.tried += 1
        kind = self.dice.choice(self.kinds)
        if not self.guided:
            letters = quantity_texts.OTHER_LETTERS
            return kind, "".join(self.dice.choices(letters, k=self.dice.randint(1, 12)))
        # A quantity with one thing wrong is more often a trap than a text with many.
        known = self.dice.choice((self.corpus, self.read, self.read))[kind] or ["1"]
        other = self.dice.choice(self.corpus[kind] or ["1"])
        return kind, changed(kind, self.dice.choice(known), other, self.dice)

    def run(self, most, end=math.inf, judge=wrong):
        """The first text that is read wrongly with what is wrong, None where there is none."""
        for _ in range(most):
            if time.monotonic() > end:
                break
            kind, text = self.next()
            fault = judge(kind, text)
            if fault:
                return kind, text, fault
            if self.guided:
                self.keep(kind, text)
        return None


def corpus():
    """The texts that were kept, as (kind, text)."""
    return [tuple(row) for row in json.loads(CORPUS.read_text(encoding="utf-8"))]


def table():
    """The texts drawn from the grammar, as (kind, text)."""
    rows = json.loads(quantity_texts.TABLE.read_text(encoding="utf-8"))
    return [(kind, text) for kind, text, _ in rows]


def fewest(texts):
    """Some of the texts that together reach as much, short ones first."""
    chosen = Fuzzer((), 0)
    for kind, text in sorted(texts, key=lambda row: (len(row[1]), row)):
        chosen.keep(kind, text)
    return chosen.texts()


def main():
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    asked.add_argument("--seconds", type=float, default=60.0)
    asked.add_argument("--seed", type=int, default=int(time.time()))
    given = asked.parse_args()
    first = FIRST + (corpus() if CORPUS.exists() else table())
    fuzzer = Fuzzer(first, given.seed)
    before = len(fuzzer.known)
    found = fuzzer.run(10**9, time.monotonic() + given.seconds)
    kept = fewest(fuzzer.texts())
    rows = ",\n".join(json.dumps(row, ensure_ascii=True) for row in kept)
    CORPUS.write_text("[\n%s\n]\n" % rows, encoding="utf-8")
    print(
        "%d texts tried; reached %d, before %d; %d texts kept"
        % (fuzzer.tried, len(fuzzer.known), before, len(kept))
    )
    if found:
        raise SystemExit("%s %r: %s" % found)


if __name__ == "__main__":
    main()
