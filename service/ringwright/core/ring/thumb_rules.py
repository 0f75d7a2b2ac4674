"""Calculation "thumb-rules": what the thumb rules would do on this very ring.

Each rule's size is put into the settled design in place of the worked one, all else held, and the
checks of sizing are asked again: the rule holds where none of them is worse for it.
"""

from collections import OrderedDict, namedtuple

from ..catalogue import figures_of, told
from ..catalogue.thumb_rules import ANSWER, THUMB_SIZE, WORKED_SIZE
from ..cautions import cautions
from ..clearances.piston import LEAST_RUNNING_PISTON
from ..problems import CoreProblem
from ..records import GOOD, STOP, WATCH, Figure, Method, Quantity, finding
from ..wording import fine_length, in_a_sentence, length, percent, stress
from . import heat_set, ring_findings, section, sizing, spring
from .design import as_inputs, settle
from .spring_back import TARGETS
from .thumb_rule_table import TABLE

FIELDS = sizing.FIELDS

_RANK = {GOOD: 0, WATCH: 1, STOP: 2}
# How a rule comes out, in the order of the figures that count them.
HOLDS, IN_PART, NOT_HERE = 0, 1, 2
_COUNTS = ("rules_held", "rules_held_in_part", "rules_not_held")
# Nobody pulls a ring open to a closer measure than this share; common practice, no source.
BY_HAND = 0.05
# Checks that tell how to go about it, or of the window that the stresses are judged in already.
_NOT_ASKED = ("cold-start", "section", "wound-on-in-haste")

# A ring as sizing tells it. ranks: check -> _RANK of its outcome.
Ring = namedtuple("Ring", ("design", "acts", "ranks"))
# One size of a rule, tried. text: its multiple, as written. size [mm]. figures: name -> Figure.
# outcome, why, value, limit: of the check that is most the worse for it; GOOD, "" where none is.
Tried = namedtuple("Tried", ("text", "size", "figures", "outcome", "why", "value", "limit"))

METHODS = (
    Method(
        "thumb-rules",
        "Thumb rules of the trade beside what is worked",
        "x = k y, y the bore, the thickness or the inside diameter; then sizing, with x for x0, "
        "the size as worked, and all else as worked",
        "a rule holds where no check of sizing is worse with it than with what is worked",
        ("practice", "khurmi", "walshaw", "blake", "ring-groove-sheet"),
    ),
)


def calculate(values):
    """The thumb rules on one ring: figures, findings, "rules", what was chosen, cautions.

    values: checked values of FIELDS, a plain dict in core units. Raises InputProblem.
    """
    design, chosen = settle(values)
    ring = _ring(design)
    held = _held(values, design)
    rows, findings = [], []
    counts = [0, 0, 0]
    for rule in TABLE:
        row, said, part = _judged(rule, held, ring)
        rows.append(row)
        findings.append(said)
        counts[part] += 1
    return OrderedDict(
        (
            ("figures", figures_of(ANSWER, dict(zip(_COUNTS, counts)), {})),
            ("findings", findings),
            ("rules", rows),
            ("chosen", chosen),
            ("cautions", cautions("figures", "pressure-system", "stored-spring")),
        )
    )


def _held(values, design):
    """The values, with every worked size given that would follow when another is changed."""
    held = dict(values)
    for name in TARGETS:
        held[name] = None
    made = as_inputs(design)
    for name in (
        "wall_pressure",
        "radial_thickness",
        "ring_width",
        "closed_gap",
        "piston_diameter",
    ):
        held[name] = made[name]
    return held


def _ring(design):
    acts = sizing.behaviour(design)
    found = ring_findings.findings(design, acts)
    return Ring(design, acts, dict([(one.check, _RANK[one.outcome]) for one in found]))


def _judged(rule, held, ring):
    """(row of "rules", Finding, HOLDS, IN_PART or NOT_HERE) of one Rule on a Ring."""
    before = ""
    spread = rule.key == "former" and ring.design.duty.setting == heat_set.SPREAD
    if spread:
        before = "Sprung on a former and not spread: "
        held, ring = _sprung(held, ring)
    unit = rule.of(ring.design)
    tries = []
    for text, share in rule.shares:
        if rule.puts is None:
            tries.append(_opened(text, share * unit, ring))
        else:
            tries.append(_tried(rule, text, share * unit, held, ring))
    good = [one for one in tries if one.outcome == GOOD]
    part = HOLDS if len(good) == len(tries) else IN_PART if good else NOT_HERE
    worked = rule.worked(ring.design, ring.acts)
    gives = _gives(rule, tries)
    row = OrderedDict((("rule", rule.key), ("title", rule.title), ("source", rule.source)))
    row["thumb_size"] = told(THUMB_SIZE, _between([one.size for one in tries]), {})
    if worked is not None:
        row["worked_size"] = told(WORKED_SIZE, worked, {})
    for name, figure in gives:
        row[name] = figure
    check = rule.key + "-thumb-rule"
    if part == HOLDS:
        row["verdict"] = "holds"
        row["why"] = _after(before, tries[0].why or _says(rule, gives))
        return row, finding(check, GOOD, row["why"]), part
    blamed = _blamed(tries, part)
    if len(tries) > 1:
        before = "At %s: " % _words(rule, [blamed])
    row["verdict"] = "holds for %s only" % _words(rule, good) if good else "not here"
    row["why"] = _after(before, blamed.why)
    outcome = WATCH if good else blamed.outcome
    remedy = "Set it spread by a spacer, as it is worked."
    if not spread:
        remedy = _remedy(rule, ring.design, worked)
    return row, finding(check, outcome, row["why"], remedy, blamed.value, blamed.limit), part


def _sprung(held, ring):
    """(values, Ring) of a spread ring were it set on a former; judged against the spread one."""
    held = dict(held, setting=heat_set.SPRUNG)
    try:
        design = settle(held)[0]
        return held, Ring(design, sizing.behaviour(design), ring.ranks)
    except CoreProblem:
        return held, ring


def _remedy(rule, design, worked):
    """What to do instead of a Rule. worked: what stands in its place [mm], None for nothing."""
    if worked is None:
        return "Wind it on, or open it over a taper plug."
    said = "Take what is worked, %s" % length(worked)
    if rule.key == "section-and-gap":
        said += " thick with a free gap of " + length(
            design.spring.gap_change + design.duty.closed_gap
        )
    return said + "."


def _at(text, size, figures=None, outcome=GOOD, why="", value=None, limit=None):
    """A Tried; no figures are those of a ring that cannot be worked, or is not put on so."""
    return Tried(
        text=text,
        size=size,
        figures=figures or {},
        outcome=outcome,
        why=why,
        value=value,
        limit=limit,
    )


def _tried(rule, text, size, held, ring):
    """The Tried of one size put in the place of the worked one."""
    values = dict(held)
    given = rule.puts(size, ring.design)
    for name in TARGETS:
        if name in given:
            values["wall_pressure"] = None
    values.update(given)
    try:
        design = settle(values)[0]
        acts = sizing.behaviour(design)
    except CoreProblem as problem:
        return _at(text, size, outcome=STOP, why=str(problem) + ".")
    worst = None
    for one in ring_findings.findings(design, acts):
        rank = _RANK[one.outcome]
        if one.check in _NOT_ASKED or rank <= ring.ranks.get(one.check, 0):
            continue
        if worst is None or rank > _RANK[worst.outcome]:
            worst = one
    figures = sizing.figures(design, acts)
    if worst is None and rule.key == "piston-clearance":
        worst = _tight_piston(design, figures["piston_clearance_hot"].value, ring)
    if worst is None:
        return _at(text, size, figures)
    return _at(
        text,
        size,
        figures,
        outcome=worst.outcome,
        why=worst.why,
        value=worst.value,
        limit=worst.limit,
    )


def _tight_piston(design, left, ring):
    """A Finding where next to nothing is left round the hot piston, else None. left [mm]."""
    worked = sizing.figures(ring.design, ring.acts)["piston_clearance_hot"].value
    if left >= min(LEAST_RUNNING_PISTON, worked):
        return None
    return finding(
        "piston-clearance-thumb-rule",
        WATCH,
        "Started hot in a half-warm cylinder, only %s is left round the piston."
        % fine_length(left),
        "Turn the piston down.",
        Quantity(left, "mm"),
        Quantity(LEAST_RUNNING_PISTON, "mm"),
    )


def _opened(text, size, ring):
    """The Tried of ends pulled that far apart: does the ring clear its piston, and does it bear it?

    size: between the ends [mm]. ring: a Ring.
    """
    d, needed = ring.design, ring.acts.opening
    if needed is None:
        why = "A double-turn ring goes on turn by turn; its ends are not pulled apart."
        return _at(text, size, outcome=WATCH, why=why)
    # Ends that stand further apart by themselves need no pull.
    put_on = spring.opening_stress(
        max(size, d.spring.gap_change),
        d.spring.gap_change,
        d.duty.bore,
        d.section.thickness,
        d.duty.modulus,
    )
    declared = sizing.figures(d, ring.acts)["sprung_on_stress"]
    figure = Figure(put_on, declared.unit, declared.symbol, declared.method, (), None, None)
    share = put_on / d.duty.ring_material.bending_strength
    outcome = GOOD
    if share > section.ONCE_WATCH:
        outcome = STOP if share > section.ONCE_STOP else WATCH
    why = "It passes over the piston at %s; opened to %s it sees %s, %s of its strength." % (
        length(needed),
        length(size),
        stress(put_on),
        percent(share),
    )
    if _RANK[outcome] <= ring.ranks["sprung-on"]:
        outcome = GOOD
    if size < (1.0 - BY_HAND) * needed:
        outcome = max(outcome, WATCH, key=_RANK.get)
    return _at(
        text,
        size,
        {"sprung_on_stress": figure},
        outcome=outcome,
        why=why,
        value=Quantity(size, "mm"),
        limit=Quantity(needed, "mm"),
    )


def _after(before, said):
    return before + in_a_sentence(said) if before else said


def _words(rule, tries):
    """Which multiples of a Rule, as the trade says them: "1/28 to 1/32 of the bore"."""
    ends = tries[0].text if len(tries) == 1 else "%s to %s" % (tries[0].text, tries[-1].text)
    return ends + " " + rule.times if rule.times else ends


def _between(numbers):
    """A number, or (least, the middle one tried, greatest) of several."""
    if len(numbers) == 1:
        return numbers[0]
    return min(numbers), numbers[len(numbers) // 2], max(numbers)


def _gives(rule, tries):
    """(name, Figure with its least and greatest) of what a Rule changes, of sizes that work."""
    worked = [one.figures for one in tries if one.figures]
    rows = []
    if worked:
        for name, _ in rule.gives:
            one = worked[len(worked) // 2][name]
            numbers = [figures[name].value for figures in worked]
            low = high = None
            if len(rule.shares) > 1:
                low, high = min(numbers), max(numbers)
            rows.append((name, Figure(one.value, one.unit, one.symbol, one.method, (), low, high)))
    return rows


def _says(rule, gives):
    """What a Rule gives, in its own sentence."""
    words = []
    for (_, worded), (_, figure) in zip(rule.gives, gives):
        said = worded(figure.value)
        if figure.low is not None:
            low, high = worded(figure.low), worded(figure.high)
            said = low if low == high else low + " to " + high
        words.append(said)
    return rule.says % tuple(words)


def _blamed(tries, part):
    """The Tried to tell of: the worst where a rule holds in part, the best where it does not."""
    found = None
    for one in tries:
        if one.outcome == GOOD:
            continue
        if found is None:
            found = one
        elif part == IN_PART and _RANK[one.outcome] > _RANK[found.outcome]:
            found = one
        elif part == NOT_HERE and _RANK[one.outcome] < _RANK[found.outcome]:
            found = one
    return found
