"""What a careful machinist would ask of a ring before cutting metal, as findings in words."""

from ..catalogue.inputs_ring import PLAIN, PRACTICE_PRESSURE
from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..wording import (
    angle,
    decimal,
    fine_length,
    force,
    length,
    percent,
    ratio,
    stress,
    wall_pressure,
)
from . import fit_findings, heat_set, section, spring
from .judging import LIGHT_WATCH, judge_light, judge_pressure

LARGEST_WIDTH_RATIO = 1.5
THIN_RING = 40.0
THICK_RING = 15.0
LEAST_GRIP = 0.5


def findings(design, acts):
    """List of Finding for a Design and its sizing.Behaviour, in the order of the work."""
    rows = pressure(design)
    _sawn_open(rows, design)
    _stresses(rows, design, acts)
    _bearing(rows, design, acts)
    section_findings(rows, design)
    return rows + fit_findings.findings(design)


def pressure(design, own=None):
    """List of one Finding for the pressure on the wall, the expander's included.

    design: a Design, or a record with those of its fields. own: mean pressure of its own spring
    [N/mm2], where that is not the design's.
    """
    d = design
    own = d.spring.wall_pressure if own is None else own
    total = own + d.expander_pressure
    judged = judge_pressure(total)
    said = wall_pressure(total)
    if d.expander_pressure:
        said += " with the expander behind it"
    value, limit = Quantity(total, "MPa"), Quantity(judged.limit, "MPa")
    bound = wall_pressure(judged.limit)
    if judged.outcome == GOOD:
        why = "The ring presses with %s, within what practice uses." % said
        return [finding("wall-pressure", GOOD, why, "", value, limit)]
    if total > judged.limit:
        why = "The ring presses with %s; above %s it wears the bore and takes power." % (
            said,
            bound,
        )
        remedy = "Ask for less wall pressure, or make the ring thinner."
        if d.expander_pressure:
            remedy = "Fit a weaker expander, or ask for less wall pressure."
        return [finding("too-stiff", judged.outcome, why, remedy, value, limit)]
    why = "The ring presses with only %s; below %s it lifts off the wall and leaks." % (
        said,
        bound,
    )
    if d.duty.ring_material.family == "iron":
        remedy = "Ask for more wall pressure or a larger free gap, or make the ring thicker."
    else:
        remedy = (
            "Fit a spring expander behind it, sized by the calculation of that name, that adds "
            "%s; or take a stronger material: this one gives way before it presses much harder."
        ) % wall_pressure(PRACTICE_PRESSURE - own)
    return [finding("too-slack", judged.outcome, why, remedy, value, limit)]


def _sawn_open(rows, d):
    """Sawing itself opens the ring; where that is more than the wanted gap no former can help."""
    former = (
        d.spring.former_diameter is not None and d.spring.former_diameter <= d.blank.bored_inside
    )
    if former or (
        d.spring.spacer_width is not None and d.spring.spacer_width <= d.allowances.gap_kerf
    ):
        rows.append(
            finding(
                "sawn-open",
                STOP,
                "The saw cut alone, %s along the ring, opens it further than the wall pressure "
                "asks." % length(d.allowances.gap_kerf),
                "Use a thinner saw, or cut the ends square.",
                Quantity(d.allowances.gap_kerf, "mm"),
                Quantity(d.spring.gap_change, "mm"),
            )
        )


def _stresses(rows, d, acts):
    strength = d.duty.ring_material.bending_strength
    brittle = d.duty.ring_material.family == "iron"
    word = "break" if brittle else "take a set"

    def once(check, value, doing, remedy):
        in_bending(
            rows, check, value, strength, section.ONCE_WATCH, section.ONCE_STOP, doing, word, remedy
        )

    in_bending(
        rows, "closed-stress", acts.closed_tension, strength, section.PERMANENT_WATCH,
        section.PERMANENT_STOP, "closed in the bore", word,
        "Make the ring thicker at the same wall pressure, or ask for less pressure.",
    )  # fmt: skip
    on_former = d.duty.setting != heat_set.SPREAD
    once(
        "forming",
        acts.forming,
        "put on its former cold" if on_former else "spread on its spacer cold",
        "Use a smaller former, heat the ring before it goes on, or set it twice with a rising size."
        if on_former
        else "Use a narrower spacer, or set it twice with a rising spacer.",
    )
    if d.duty.turns == 1:
        once(
            "sprung-on",
            acts.sprung_on,
            "pulled open by its ends to pass over the piston",
            "Make the ring thinner, slide it on over strips so that it opens evenly, or build up "
            "the piston.",
        )
    else:
        once(
            "turning-through",
            acts.through.equivalent,
            "turned through itself",
            "Make the ring narrower or thinner, or leave less for facing.",
        )
        once(
            "wound-on",
            acts.wound_on.spread_out,
            "wound on to the piston with the crossing spread over a third of a turn",
            "Make the ring thinner, or open it over a taper plug.",
        )
        once(
            "sprung-on",
            acts.sprung_on,
            "opened over a taper plug of the piston's size",
            "Make the ring thinner, or build up the piston.",
        )
        hurried, let_down = acts.wound_on.hurried_high, acts.let_down.spread_out
        worse = max(hurried, let_down)
        if worse > section.ONCE_WATCH * strength >= acts.wound_on.spread_out:
            rows.append(
                finding(
                    "wound-on-in-haste",
                    WATCH,
                    "Wound on in haste, the crossing within 20 degrees, it may see %s. With its "
                    "first end let down from the piston's edge by its width, it may see %s."
                    % (stress(hurried), stress(let_down)),
                    "Spread the crossing over a third of a turn: slip strips under the ring as "
                    "you go. Keep the first end at the piston's edge until the whole ring is on.",
                    Quantity(worse, "MPa"),
                    Quantity(section.ONCE_WATCH * strength, "MPa"),
                )
            )


def in_bending(rows, check, value, strength, watch, stop, doing, word, remedy):
    """Adds the Finding of a stress [N/mm2] that bends the ring.

    check: its key. strength: of the metal in bending [N/mm2]; watch, stop: shares of it. doing:
    what bends it; word: what comes of too much; remedy: in words.
    """
    share = value / strength
    outcome = GOOD if share <= watch else WATCH if share <= stop else STOP
    limit = watch if outcome != STOP else stop
    if outcome == GOOD:
        why = "%s, it sees %s, %s of its strength in bending." % (
            doing[:1].upper() + doing[1:],
            stress(value),
            percent(share),
        )
    else:
        why = "%s, it sees %s, %s of its strength in bending; it %s %s." % (
            doing[:1].upper() + doing[1:],
            stress(value),
            percent(share),
            "may" if outcome == WATCH else "will",
            word,
        )
    rows.append(
        finding(
            check,
            outcome,
            why,
            "" if outcome == GOOD else remedy,
            Quantity(value, "MPa"),
            Quantity(limit * strength, "MPa"),
        )
    )


def _bearing(rows, d, acts):
    if acts.light > 0.0:
        outcome = judge_light(acts.light).outcome
        rows.append(
            finding(
                "light",
                outcome,
                "Light shows behind each tip, up to %s at %s from it: set on a round former and "
                "turned while forced round."
                % (fine_length(acts.light), angle(heat_set.LIGHT_ANGLE)),
                ""
                if outcome == GOOD
                else "Close it in a round closing ring for its last turning, or set it sprung.",
                Quantity(acts.light, "mm"),
                Quantity(LIGHT_WATCH, "mm"),
            )
        )
    if acts.slack_angle == 0.0:
        rows.append(finding("bearing", GOOD, "The ring presses evenly all round a round bore."))
    elif d.duty.ring_type == PLAIN:
        rows.append(
            finding(
                "bearing",
                WATCH,
                "A plain ring set on a round former bears over the back third and at its "
                "tips; it does not bear over %s behind each tip." % angle(acts.slack_angle),
                "Set it spread by a spacer, or finish it held by a flexible band.",
                Quantity(acts.slack_angle, "deg"),
                Quantity(0.0, "deg"),
            )
        )
    else:
        rows.append(
            finding(
                "bearing",
                GOOD,
                "Behind each of its two free ends %s bear nothing, but there the other turn bears "
                "fully." % angle(acts.slack_angle),
                "",
                Quantity(acts.slack_angle, "deg"),
            )
        )
    if d.duty.turns == 2 and d.duty.setting == heat_set.SPREAD:
        rows.append(
            finding(
                "setting",
                STOP,
                "The tips of a double-turn ring cannot be held apart by a spacer: its bridge "
                "carries no moment that way.",
                "Set it sprung or bound on a round former.",
            )
        )
    if d.duty.turns == 2 and acts.grip < LEAST_GRIP:
        rows.append(
            finding(
                "grip",
                WATCH,
                "Turned back, the two turns press on one another with only %s." % force(acts.grip),
                "Make the slit narrower, or soak hotter or longer.",
                Quantity(acts.grip, "N"),
                Quantity(LEAST_GRIP, "N"),
            )
        )


def section_findings(rows, d):
    """Adds what is to be said of the section of a Design. rows: list of Finding."""
    proportion = d.duty.bore / d.section.thickness
    if d.section.window.lowest is None:
        rows.append(
            finding(
                "section",
                WATCH,
                "No thickness meets pressure and strength together with full margins.",
                "Ask for less wall pressure, make the ring narrower, or choose a stronger "
                "material.",
            )
        )
    if not THICK_RING <= proportion <= THIN_RING:
        rows.append(
            finding(
                "proportion",
                WATCH,
                "Bore over thickness is %s; the sums are checked from %d to %d."
                % (decimal(proportion, 1), THICK_RING, THIN_RING),
                "Choose a %s ring, or measure the first one before you make the rest."
                % ("thinner" if proportion < THICK_RING else "thicker"),
                Quantity(proportion, "1"),
                Quantity(THICK_RING if proportion < THICK_RING else THIN_RING, "1"),
            )
        )
    width_ratio = d.turn_width / d.section.thickness
    if width_ratio > LARGEST_WIDTH_RATIO:
        rows.append(
            finding(
                "width",
                WATCH,
                "Each turn is %s times as wide as it is thick; more than %s seals no better and is "
                "harder to bed in." % (ratio(width_ratio), decimal(LARGEST_WIDTH_RATIO, 1)),
                "Make the ring narrower, or use two rings in the groove's place.",
                Quantity(width_ratio, "1"),
                Quantity(LARGEST_WIDTH_RATIO, "1"),
            )
        )
    if d.spring.curvature_change is None:
        springy = spring.springiness(
            d.spring.wall_pressure, d.duty.bore, d.section.thickness, d.duty.modulus
        )
        if springy > spring.CHECKED_SPRINGINESS:
            rows.append(
                finding(
                    "springy",
                    WATCH,
                    "So springy a ring (K = %s) lies outside what was checked." % ratio(springy),
                    "Make the ring thicker, or measure the first one before you make the rest.",
                    Quantity(springy, "1"),
                    Quantity(spring.CHECKED_SPRINGINESS, "1"),
                )
            )
