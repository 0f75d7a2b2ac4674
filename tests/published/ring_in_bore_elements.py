"""A ring pressed into a rigid bore by plane finite elements with contact: half a ring, CalculiX.

Eight-node plane-stress elements, large deflection, surface-to-surface contact without friction. The
wall is a mesh of its own whose nodes are all driven inwards from clear of the free ring to the
bore, so the ring bends by its whole gap and slides as it goes. Nothing here is shared with the
core.
"""

import math
import re
import subprocess
from collections import namedtuple

ALONG, THROUGH = 90, 1
WALL_STEPS = 294
STIFFNESS = 2.0e5
# Share of the wall's way and how much of it at a time. Where the surfaces meet is reckoned anew
# with each increment, so the last ones are small.
PACES = ((0.9, 0.25), (0.99, 0.5), (1.0, 1.0))
# Holds the half ring against sliding bodily before the wall touches it [N/mm].
TETHER = 1.0e-3

# bore, thickness, free: outside diameter closed, radial thickness, free neutral radius [mm].
# oval: by how much the radius of the bore is larger towards gap and back [mm]. steam: behind [MPa].
Case = namedtuple("Case", ("bore", "thickness", "free", "modulus", "oval", "steam"))
# Per mm of width: all the force on the wall of the whole ring [N/mm]; widest light [mm] and where
# it is, from the tip [deg]; share of the force within 5 degrees of the two tips.
Found = namedtuple("Found", ("force", "light", "place", "tips"))


def solve(case, folder):
    """Found for a Case; `folder` receives the solver's files."""
    (folder / "ring.inp").write_text(deck(case))
    done = subprocess.run(["ccx", "ring"], cwd=folder, capture_output=True, text=True, timeout=900)
    assert "Job finished" in done.stdout, done.stdout[-2000:]
    return read(case, (folder / "ring.dat").read_text())


def ring_nodes(case):
    """{number: (x, y)}: rows through the thickness, columns from the back to the tip."""
    length = math.pi * 0.5 * (case.bore - case.thickness)
    nodes = {}
    for j in range(2 * THROUGH + 1):
        radius = case.free + case.thickness * (j / (2.0 * THROUGH) - 0.5)
        for i in range(2 * ALONG + 1):
            if i % 2 and j % 2:
                continue
            angle = math.pi - length / case.free * i / (2.0 * ALONG)
            nodes[1 + j * 1000 + i] = (radius * math.cos(angle), radius * math.sin(angle))
    return nodes


def wall_nodes(case):
    """{number: ((x, y), angle)}: two rows, from 8 degrees below the back to 8 beyond the gap."""
    start = case.free + 0.5 * case.thickness + 0.02
    nodes = {}
    for j in range(2):
        for i in range(WALL_STEPS + 1):
            angle = math.radians(188.0 - 196.0 * i / WALL_STEPS)
            radius = start + 3.0 * j
            nodes[100001 + j * 1000 + i] = (
                (radius * math.cos(angle), radius * math.sin(angle)),
                angle,
            )
    return nodes, start


def wall_radius(case, angle):
    return 0.5 * case.bore + case.oval * math.cos(2.0 * angle)


def deck(case):
    ring, (wall, start) = ring_nodes(case), wall_nodes(case)
    lines = ["*NODE, NSET=RING"]
    lines += ["%d, %.10f, %.10f, 0." % (n, x, y) for n, (x, y) in ring.items()]
    lines += ["*NODE, NSET=WALL"]
    lines += ["%d, %.10f, %.10f, 0." % (n, x, y) for n, ((x, y), _) in wall.items()]
    lines += ["*ELEMENT, TYPE=CPS8, ELSET=RING"]
    outer, inner, tip = [], [], []
    for j in range(THROUGH):
        for i in range(ALONG):
            number = 1 + j * ALONG + i
            a = 1 + 2 * j * 1000 + 2 * i
            corners = (a, a + 2, a + 2002, a + 2000, a + 1, a + 1002, a + 2001, a + 1000)
            lines.append("%d, " % number + ", ".join(str(n) for n in corners))
            if j == THROUGH - 1:
                outer.append("%d, S3" % number)
            if j == 0:
                inner.append("%d, P1" % number)
            if i == ALONG - 1:
                tip.append("%d, P2" % number)
    lines += ["*ELEMENT, TYPE=CPS4, ELSET=WALLS"]
    facing = []
    for i in range(WALL_STEPS):
        number = 5001 + i
        a = 100001 + i
        lines.append("%d, %d, %d, %d, %d" % (number, a, a + 1, a + 1001, a + 1000))
        facing.append("%d, S1" % number)
    lines += ["*SURFACE, NAME=FACE, TYPE=ELEMENT", *outer]
    lines += ["*SURFACE, NAME=BORE, TYPE=ELEMENT", *facing]
    lines += ["*MATERIAL, NAME=IRON", "*ELASTIC", "%g, 0.26" % case.modulus]
    lines += ["*SOLID SECTION, ELSET=RING, MATERIAL=IRON", "1."]
    # Every node of the wall is driven, so its stuff bears nothing; were it stiff it would only
    # add to the forces read there.
    lines += ["*MATERIAL, NAME=FOAM", "*ELASTIC", "1e-6, 0."]
    lines += ["*SOLID SECTION, ELSET=WALLS, MATERIAL=FOAM", "1."]
    lines += ["*ELEMENT, TYPE=SPRING1, ELSET=TETHER", "9001, %d" % (1 + THROUGH * 1000)]
    lines += ["*SPRING, ELSET=TETHER", "1", "%g" % TETHER]
    lines += ["*SURFACE INTERACTION, NAME=SLIDES"]
    lines += ["*SURFACE BEHAVIOR, PRESSURE-OVERCLOSURE=LINEAR", "%g" % STIFFNESS]
    lines += ["*CONTACT PAIR, INTERACTION=SLIDES, TYPE=SURFACE TO SURFACE", "FACE, BORE"]
    lines += ["*BOUNDARY"]
    lines += ["%d, 2, 2" % (1 + j * 1000) for j in range(2 * THROUGH + 1)]
    for share, pace in PACES:
        lines += ["*STEP, NLGEOM, INC=300", "*STATIC", "%g, 1., 1e-4, %g" % (pace, pace)]
        lines += ["*BOUNDARY"]
        for n, ((_, _), angle) in wall.items():
            move = share * (wall_radius(case, angle) - start)
            lines.append("%d, 1, 1, %.10f" % (n, move * math.cos(angle)))
            lines.append("%d, 2, 2, %.10f" % (n, move * math.sin(angle)))
        if case.steam:
            push = share * case.steam
            lines += ["*DLOAD", *["%s, %g" % (face, push) for face in inner + tip]]
        if share < 1.0:
            lines += ["*END STEP"]
    lines += ["*NODE PRINT, NSET=WALL, FREQUENCY=999", "RF"]
    lines += ["*NODE PRINT, NSET=RING, FREQUENCY=999", "U", "*END STEP", ""]
    return "\n".join(lines)


def read(case, text):
    """Found from the printed reactions and displacements of the last increment."""
    blocks = re.split(r"\n\s*(forces|displacements)[^\n]*\n", text)
    reactions = table(blocks[blocks.index("forces") + 1])
    moves = table(blocks[blocks.index("displacements") + 1])
    wall, _ = wall_nodes(case)
    force = tips = 0.0
    for n, (x, y, _) in reactions.items():
        angle = wall[n][1]
        outwards = -(x * math.cos(angle) + y * math.sin(angle))
        force += outwards
        if abs(angle) < math.radians(5.0):
            tips += outwards
    ring = ring_nodes(case)
    light, place = 0.0, 0.0
    for i in range(2 * ALONG + 1):
        n = 1 + 2 * THROUGH * 1000 + i
        x, y = ring[n][0] + moves[n][0], ring[n][1] + moves[n][1]
        angle = math.atan2(y, x)
        gap = wall_radius(case, angle) - math.sqrt(x * x + y * y)
        if gap > light:
            light, place = gap, math.degrees(angle)
    return Found(2.0 * force, light, place, tips / force)


def table(text):
    rows = {}
    for line in text.strip().splitlines():
        parts = line.split()
        if len(parts) == 4:
            rows[int(parts[0])] = tuple(float(part) for part in parts[1:])
    return rows
