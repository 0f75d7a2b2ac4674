"""Texts of quantities made up by a fuzzer that watches which lines of the reader they reach:

    python -m pip install atheris==3.0.0 && PYTHONPATH=service:tests python tests/fuzz/quantities.py

By hand, not by tests/run: the fuzzer has wheels for few Pythons (3.11 to 3.13 on Linux). Whatever
is made up must be read as openapi/quantity.lark has it, by a general parser and factors that are
not ours, or be refused with words, in a moment. It ends at the first text that is not, prints it
and keeps it in tests/out; such a text goes into tests/contract/quantity_texts.py.

    --seconds N    how long, 60 by default
    --corpus DIR   folder with texts to go on from, and for those that reach new lines
"""

import argparse
import json
import math
import sys
import tempfile
import time
import zlib
from pathlib import Path

import atheris

with atheris.instrument_imports(include=["ringwright.units"]):
    from ringwright import units

from contract import quantity_texts

KINDS = sorted(quantity_texts.FACTORS)
OUT = Path(__file__).parents[1] / "out"
# Most processor time that a text may take to be read or refused [s]: a thousand times the usual.
PATIENCE = 0.25


def check(data):
    """Reads one made-up text; raises AssertionError where it is not read as it must be."""
    if not data:
        return
    kind = KINDS[data[0] % len(KINDS)]
    text = data[1:].decode("utf-8", "ignore")
    began = time.process_time()
    try:
        got = units.read(kind, text)
    except units.UnitProblem as problem:
        got = None
        said = problem.code, problem.message, problem.remedy
        assert all(said) and sum(map(len, said)) < 2000, (kind, text, said)
    took = time.process_time() - began
    assert took < PATIENCE, (kind, text, took)
    assert got is None or math.isfinite(got), (kind, text, got)
    # The general parser takes its time: of what is refused it judges every tenth, always the same.
    if got is None and zlib.crc32(data) % 10:
        return
    # The radian's factor is no fraction: the table of units says it to more digits than a double.
    if "rad" not in text:
        expected = quantity_texts.value(kind, text)
        assert got == expected, (kind, text, got, expected)


def first_texts(folder):
    """Writes the texts of the shared table, for the fuzzer to go on from."""
    rows = json.loads(quantity_texts.TABLE.read_text(encoding="utf-8"))
    for at, (kind, text, _) in enumerate(rows):
        if kind in KINDS:
            start = bytes([KINDS.index(kind)])
            (folder / ("%05d" % at)).write_bytes(start + text.encode("utf-8", "ignore"))


def write_words(path):
    """Writes the spellings of units and the marks of numbers, for the fuzzer to put together."""
    words = {word for kind in KINDS for word in quantity_texts.spellings(kind)}
    words |= set(quantity_texts.OTHER_LETTERS)
    coded = ["".join("\\x%02x" % byte for byte in word.encode()) for word in sorted(words)]
    path.write_text("".join('"%s"\n' % word for word in coded), encoding="ascii")


def main():
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    asked.add_argument("--seconds", type=int, default=60)
    asked.add_argument("--corpus", type=Path)
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as scratch:
        folder = given.corpus or Path(scratch)
        folder.mkdir(parents=True, exist_ok=True)
        if not any(folder.iterdir()):
            first_texts(folder)
        OUT.mkdir(exist_ok=True)
        write_words(OUT / "words.dict")
        told = [
            "-artifact_prefix=%s/" % OUT,
            "-dict=%s/words.dict" % OUT,
            "-max_total_time=%d" % given.seconds,
            "-max_len=120",
            "-print_final_stats=1",
        ]
        atheris.Setup([sys.argv[0], str(folder), *told], check)
        atheris.Fuzz()


if __name__ == "__main__":
    main()
