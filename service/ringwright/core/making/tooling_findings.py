"""What a careful machinist would ask of the tooling before turning it, as findings in words."""

from ..records import GOOD, STOP, WATCH, Quantity, finding
from ..ring import blank, heat_set
from ..ring.allowances import CUT_ANGLES
from ..ring.soak import WIDE_RELIEF, soak_range
from ..wording import decimal, fine_length, length, temperature

# Side play of the spigot in the closed ring, which is not quite round [mm].
SPIGOT_PLAY = 0.1
# A feeler cannot be trusted below this [mm].
LEAST_FEELER = 0.03
# Play of the spigot in the ring beyond which the ring cannot be trusted to run true, share of a1.
SPIGOT_SHARE = 0.25
# A tongue of a stepped end narrower than this breaks in filing [mm]; common practice, no source.
LEAST_TONGUE = 1.5


def findings(design, tooling, values):
    """List of Finding for a Design, its tooling.Tooling and the checked values they came from."""
    rows = []
    _soak(rows, design, values)
    if design.duty.turns == 2:
        _slit(rows, design, tooling)
    if tooling.joint is not None and tooling.joint.tongue_width < LEAST_TONGUE:
        rows.append(
            finding(
                "tongue",
                WATCH,
                "Each tongue of the stepped end is only %s wide, and breaks easily in the filing."
                % length(tooling.joint.tongue_width),
                "Part the tongues with a thinner saw, make the ring wider, or cut its ends at an "
                "angle.",
                Quantity(tooling.joint.tongue_width, "mm"),
                Quantity(LEAST_TONGUE, "mm"),
            )
        )
    _holding(rows, design, tooling)
    if design.allowances.inside > 0.0:
        _band(rows, design)
    return rows


def _soak(rows, d, values):
    window = soak_range(d.duty.ring_material.family)
    value = Quantity(d.soak.temperature, "degC")
    if window is None:
        rows.append(
            finding(
                "soak",
                STOP,
                "%s cannot be heat-set." % d.duty.ring_material.title,
                "Cut it to the bore and put a spring expander behind it, or choose iron or bronze.",
            )
        )
        return
    said = temperature(d.soak.temperature)
    if d.soak.temperature < window.coldest:
        rows.append(
            finding(
                "soak-cold",
                WATCH,
                "A soak at %s relaxes little, and no two rings alike." % said,
                "Soak at %s for an hour, or find the relief from the first ring before you make "
                "the rest." % temperature(window.usual),
                value,
                Quantity(window.coldest, "degC"),
            )
        )
    elif d.soak.temperature > window.hottest:
        rows.append(
            finding(
                "soak-hot",
                WATCH,
                "Above %s ordinary %s begins to change: it grows, scales and softens."
                % (temperature(window.hottest), d.duty.ring_material.family),
                "Soak at %s for longer instead." % temperature(window.usual),
                value,
                Quantity(window.hottest, "degC"),
            )
        )
    else:
        rows.append(
            finding("soak", GOOD, "A soak at %s relaxes most of the bending." % said, "", value)
        )
    if values.get("relief") is None and d.soak.relief.high - d.soak.relief.low > WIDE_RELIEF:
        rows.append(
            finding(
                "relief",
                WATCH,
                "What this soak relaxes is uncertain, from %s to %s of the bending."
                % (decimal(d.soak.relief.low, 2), decimal(d.soak.relief.high, 2)),
                "Make one ring, measure its free gap, and give the relief it shows.",
                Quantity(d.soak.relief.high - d.soak.relief.low, "1"),
                Quantity(WIDE_RELIEF, "1"),
            )
        )


def _slit(rows, d, t):
    needed = blank.shortest_bridge(band=d.blank.band_width, angle=CUT_ANGLES[d.duty.end_cut])
    short = t.bridge_length < needed
    rows.append(
        finding(
            "bridge",
            STOP if short else GOOD,
            "The bridge is %s long; both end cuts and its own strength need %s."
            % (length(t.bridge_length), length(needed)),
            "Leave a longer bridge, or cut the ends square." if short else "",
            Quantity(t.bridge_length, "mm"),
            Quantity(needed, "mm"),
        )
    )
    reach, depth = t.slit.reach, t.slit.depth
    if not t.slit.reaches:
        rows.append(
            finding(
                "cutter-reach",
                STOP,
                "A %s saw reaches only %s past its collar; the wall needs %s."
                % (length(t.cutter_diameter), length(max(reach, 0.0)), length(depth)),
                "Use a larger saw or a smaller collar.",
                Quantity(reach, "mm"),
                Quantity(depth, "mm"),
            )
        )
    else:
        rows.append(
            finding(
                "cutter-reach",
                GOOD,
                "The saw reaches through the wall with %s to spare." % length(reach - depth),
                "",
                Quantity(reach, "mm"),
                Quantity(depth, "mm"),
            )
        )
    thinnest = d.section.width - d.allowances.slit
    if thinnest < 0.5 * d.section.width:
        rows.append(
            finding(
                "slit-width",
                STOP if thinnest <= 0.0 else WATCH,
                "The slit is %s wide in a ring of %s: facing the step away leaves the turns thin "
                "beside the bridge." % (length(d.allowances.slit), length(d.section.width)),
                "Use a thinner slitting saw, or make the ring wider.",
                Quantity(d.allowances.slit, "mm"),
                Quantity(0.5 * d.section.width, "mm"),
            )
        )


def _band(rows, d):
    needed = heat_set.band_allowance(
        d.spring.curvature_change, d.duty.bore, d.section.thickness, d.duty.setting, d.duty.turns
    )
    left = d.blank.set_thickness - d.section.thickness
    short = left < needed
    rows.append(
        finding(
            "band-allowance",
            STOP if short else GOOD,
            "Held by a band the ring lies %s out of round; %s of wall is left to turn off."
            % (fine_length(needed), fine_length(left)),
            "Give a larger finishing_allowance." if short else "",
            Quantity(left, "mm"),
            Quantity(needed, "mm"),
        )
    )


def _holding(rows, d, t):
    closing = d.blank.finish_outside + d.allowances.finishing
    if t.pot_gap < 0.0:
        rows.append(
            finding(
                "pot",
                STOP,
                "In this pot the ends butt before the ring is in.",
                "Bore the pot to %s." % length(closing),
                Quantity(t.pot_bore, "mm"),
                Quantity(closing, "mm"),
            )
        )
    elif t.pot_gap >= d.allowances.gap_kerf + d.spring.gap_change:
        rows.append(
            finding(
                "pot",
                STOP,
                "The pot is larger than the free ring and would not grip it.",
                "Use a pot of %s." % length(closing),
                Quantity(t.pot_bore, "mm"),
                Quantity(closing, "mm"),
            )
        )
    play = t.inside_at_clamp - t.clamp_mandrel_diameter
    fits = length(t.inside_at_clamp - SPIGOT_PLAY)
    if play <= 0.0:
        rows.append(
            finding(
                "clamp-mandrel",
                STOP,
                "The spigot is larger than the closed ring is inside: it cannot be closed on it.",
                "Turn the spigot to %s." % fits,
                Quantity(t.clamp_mandrel_diameter, "mm"),
                Quantity(t.inside_at_clamp, "mm"),
            )
        )
    elif play > max(SPIGOT_SHARE * d.section.thickness, SPIGOT_PLAY + 1e-9):
        rows.append(
            finding(
                "clamp-mandrel",
                WATCH,
                "The ring has %s of play on the spigot and will come out thicker on one side."
                % fine_length(play),
                "Make a spigot of %s, or true each ring with a clock before you clamp it." % fits,
                Quantity(play, "mm"),
                Quantity(SPIGOT_SHARE * d.section.thickness, "mm"),
            )
        )
    if t.feeler_gap < LEAST_FEELER:
        rows.append(
            finding(
                "feeler-gap",
                WATCH,
                "Closed, the sawn ends lean towards each other: at the outer edge only %s is left."
                % fine_length(max(t.feeler_gap, 0.0)),
                "Dress the ends parallel with the ring closed, or give a larger closed gap.",
                Quantity(t.feeler_gap, "mm"),
                Quantity(LEAST_FEELER, "mm"),
            )
        )
