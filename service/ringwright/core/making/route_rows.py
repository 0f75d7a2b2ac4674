"""Rows of a route card before they are numbered, and the bench that reckons cuts and times."""

from collections import namedtuple

from ..catalogue.inputs import Chooser
from ..catalogue.inputs_tools import HSS, LATHE
from . import finish, machining

# key: into route_text.TEXT. sizes: list of part_sizes.Size. cut: a machining.Cut or None. minutes:
# for one ring, handling included, or None. together: for all rings, or None. each: done per ring.
Operation = namedtuple("Operation", ("key", "sizes", "cut", "minutes", "together", "each"))


def changed(row, sizes):
    """An Operation with other sizes. row: an Operation. sizes: list of part_sizes.Size."""
    return Operation(
        key=row.key,
        sizes=sizes,
        cut=row.cut,
        minutes=row.minutes,
        together=row.together,
        each=row.each,
    )


# Hand work and waiting [min a ring]; common practice, no source.
HAND_MINUTES = {
    "hold-stick": 10.0,
    "mark-out": 5.0,
    "saw-wedges": 4.0,
    "saw-ends": 4.0,
    "deburr": 3.0,
    "turn-through": 3.0,
    "put-on-former": 2.0,
    "spread": 2.0,
    "take-off": 2.0,
    "measure-free-gap": 2.0,
    "clamp": 5.0,
    "dress-ends": 6.0,
    "inspect": 10.0,
    "fit": 10.0,
    "fit-double": 12.0,
}
# How far a tool runs beyond the work, facing and turning [mm].
FACE_RUN_OUT = 1.0
TURN_RUN_OUT = 3.0


class Bench:
    """Makes rows for one job: its rings, their metal, the lathe and its tools."""

    def __init__(self, design, values):
        """design: a Design. values: checked inputs of the route card."""
        take = Chooser(values, LATHE)
        self.rings = design.duty.rings
        self.metal = design.duty.ring_material.key
        self.tool = take("tool_material")
        self.machine = take("machine")
        self.inch = values.get("inch_sizes")
        self.speeds = tuple(values.get("spindle_speeds") or ())

    def passes(self, stock, operation):
        """Passes that take off so much on the radius or the face [mm]."""
        return machining.passes(stock, operation, self.machine)

    def cut(self, operation, diameter, travel, times=1):
        """A machining.Cut on the lathe. diameter, travel [mm]. times: passes.

        A drill is of high-speed steel whatever the turning tools are.
        """
        return machining.cut(
            operation=operation,
            material_key=self.metal,
            diameter=diameter,
            travel=travel,
            tool=HSS if operation == "drill" else self.tool,
            machine=self.machine,
            times=times,
            spindle_speeds=self.speeds,
            inch=self.inch,
        )

    def turned(self, key, sizes, made):
        """A row done ring by ring. made: a Cut."""
        return Operation(
            key=key,
            sizes=finish.textured(sizes, made),
            cut=made,
            minutes=made.time,
            together=made.time * self.rings,
            each=True,
        )

    def on_sticks(self, key, sizes, made, sticks):
        """A row done along whole sticks of blanks: tool set once a stick and pass, not once a ring.

        made: a Cut for one ring.
        """
        setting = made.time - made.cutting_time
        together = self.rings * made.cutting_time + sticks * setting
        return Operation(
            key=key,
            sizes=finish.textured(sizes, made),
            cut=made,
            minutes=made.time,
            together=together,
            each=True,
        )

    def once(self, key, sizes, made, times):
        """A row done once for a stick and not for a ring. times: sticks."""
        return Operation(
            key=key,
            sizes=sizes,
            cut=made,
            minutes=made.time,
            together=times * made.time,
            each=False,
        )

    def hand(self, key, sizes, work=None):
        """A row of hand work. work: entry of HAND_MINUTES, the key itself when None."""
        minutes = HAND_MINUTES[key if work is None else work]
        return Operation(
            key=key,
            sizes=sizes,
            cut=None,
            minutes=minutes,
            together=minutes * self.rings,
            each=True,
        )

    def set_up(self, key, sizes, times):
        """A row of hand work done once for a stick and not for a ring. times: sticks."""
        minutes = HAND_MINUTES[key]
        return Operation(
            key=key, sizes=sizes, cut=None, minutes=minutes, together=minutes * times, each=False
        )

    def waited(self, key, sizes, minutes):
        """A row that takes as long for one ring as for all. minutes: None where unknown."""
        return Operation(
            key=key, sizes=sizes, cut=None, minutes=minutes, together=minutes, each=False
        )
