"""The tools of a ring, each with its sizes, limits, material, and why it is wanted."""

from collections import OrderedDict, namedtuple

from .part_sizes import bare, limited
from .part_sizes import tree as size_tree

# sizes: list of part_sizes.Size.
Tool = namedtuple("Tool", ("tool", "title", "material", "why", "sizes"))


def tools(design, tooling):
    """List of Tool for a Design and its Tooling, in the order they are used."""
    d, t = design, tooling
    listing = []
    if t.former_diameter is not None:
        listing.append(
            Tool(
                "former",
                "Set former",
                d.former_material.title,
                "Holds the ring open and round while the heat relaxes it; a hole or a web keeps it "
                "from holding heat too long.",
                [
                    limited("former_diameter", "diameter", t.former_diameter, "h9"),
                    bare("former_length", "length", t.former_length),
                ],
            )
        )
    else:
        listing.append(
            Tool(
                "spacer",
                "Spacer",
                d.former_material.title,
                "Holds the gap open while the heat relaxes the ring, with nothing else touching "
                "it.",
                [limited("spacer_width", "width", t.spacer_width, "js9")],
            )
        )
    listing.append(
        Tool(
            "pot",
            "Facing pot",
            "Grey cast iron or mild steel",
            "Grips the ring by its outside, by the ring's own spring, while its sides are faced; "
            "the shoulder must be true.",
            [
                limited("pot_bore", "bore", t.pot_bore, "H8"),
                bare("pot_depth", "depth to the shoulder", t.pot_depth),
            ],
        )
    )
    listing.append(
        Tool(
            "closing-ring",
            "Closing ring",
            "Mild steel",
            "Squeezes the ring shut, round, to the clamped gap, so that the mandrel can take hold "
            "of it.",
            [
                limited("closing_ring_bore", "bore", t.closing_ring_bore, "H7"),
                bare("closing_ring_width", "width", t.closing_ring_width),
            ],
        )
    )
    listing.append(
        Tool(
            "clamp-mandrel",
            "Clamp mandrel",
            "Mild steel",
            "Centres the closed ring and, with the end plate, grips it by its sides while its "
            "outside is turned; turn the spigot in place.",
            [
                limited("clamp_mandrel_diameter", "spigot", t.clamp_mandrel_diameter, "g6"),
                bare("spigot_length", "spigot length, less than the ring", t.spigot_length),
                bare(
                    "end_plate_diameter",
                    "shoulder, relieved to clear the tool",
                    t.end_plate_diameter,
                ),
            ],
        )
    )
    listing.append(
        Tool(
            "end-plate",
            "End plate",
            "Mild steel",
            "Bears on the ring alone, faced flat, smaller than the finished outside so that the "
            "tool runs out.",
            [bare("end_plate_diameter", "outside", t.end_plate_diameter)],
        )
    )
    listing.append(
        Tool(
            "bore-gauge",
            "Trial bore",
            "Grey cast iron",
            "A ring bored to the cylinder's size to try light and gap in, where the cylinder "
            "itself is not at hand.",
            [limited("trial_bore", "bore", d.bore, "H7")],
        )
    )
    return listing


def tree(tool):
    """A Tool as an OrderedDict for an answer. tool: a Tool."""
    return OrderedDict(
        (
            ("tool", tool.tool),
            ("title", tool.title),
            ("material", tool.material),
            ("why", tool.why),
            ("sizes", [size_tree(size) for size in tool.sizes]),
        )
    )
