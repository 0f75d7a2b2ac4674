"""Cautions, each shown where the work it belongs to is shown. They defer to local rules."""

from collections import OrderedDict

CAUTIONS = OrderedDict(
    (
        (
            "figures",
            "These figures are design aids. They do not replace measuring the engine in front of you.",
        ),
        (
            "pressure-system",
            "A cylinder is part of a pressure system. Examination, testing and return to steam belong to a competent person under your local rules (insurer, inspector, national regulations).",
        ),
        ("isolate", "Drain and isolate the cylinder, and let it cool, before you open it."),
        (
            "hot-work",
            "Hot work: clear the area of anything that burns, keep an extinguisher at hand, ventilate, wear heat-proof gloves and eye protection. Metal that glows no longer may still burn.",
        ),
        (
            "molten",
            "Molten metal and salt spit at the least damp; hot zinc, lead and salt give off fumes that poison: a bead is enough, ventilate. Never quench the ring: it cracks, and the steam scalds.",
        ),
        (
            "iron-dust",
            "Iron dust and swarf: eye protection, no loose clothing, brush chips away, never by hand; keep the dust out of your lungs.",
        ),
        (
            "bronze-dust",
            "Bronze swarf flies like needles: eye protection, no loose clothing, brush chips away, never by hand; keep the dust out of your lungs.",
        ),
        (
            "plastic-dust",
            "Filled PTFE: stop the lathe before you clear its strings; keep the dust out of your lungs. Never burn it, and do not smoke near it: hot, it gives off poisonous fumes.",
        ),
        (
            "sharp-edges",
            "Sawn edges are razor sharp: take the burr off before you handle the ring.",
        ),
        (
            "stored-spring",
            "A ring under tension flies when it slips or breaks: eye protection, face out of line, work over the bench.",
        ),
        (
            "rotating-work",
            "Lathe: guard in place, chuck key out, no gloves or loose sleeves near rotating work.",
        ),
        (
            "slitting-saw",
            "Slitting saw and rotary table: guard the cutter, clamp the work, feed slowly, keep hands away until it stands still.",
        ),
        (
            "motion",
            "An engine that is turned or let go can move by itself: scotch the wheels, block the motion, keep hands out of it.",
        ),
        (
            "steam-burns",
            "Live steam burns: open drain cocks from the side, stand clear of glands and covers.",
        ),
    )
)

# Family of a metal -> the caution of its dust.
DUST_OF = {"iron": "iron-dust", "bronze": "bronze-dust", "plastic": "plastic-dust"}


def cautions(*keys):
    """The texts for those keys, in that order, each with its key."""
    return [OrderedDict((("key", key), ("text", CAUTIONS[key]))) for key in keys]
