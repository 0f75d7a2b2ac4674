"""Bibliography: everything the figures rest on, one key each.

basis says how far it was checked: "read" (the figure was read in a copy of the source), "run"
(given by a general-purpose library that was run), "memory" (not checked against a copy),
"practice" (common practice of the trade, no source), "derived" (worked out for this project and
checked by independent means named in `where`).
"""

from .records import Source
from .sources_of_tables import TABLES

SOURCES = (
    Source(
        "beam",
        "Thin curved beam theory, derived for this project",
        "checked by finite elements (PyNiteFEA, scikit-fem) in tests/published; nonlinear solid cases in tests/published/data",
        "derived",
    ),
    Source(
        "contact",
        "Contact of a ring with a rigid wall, derived for this project",
        "checked by a quadratic programme and by nonlinear solid finite elements",
        "derived",
    ),
    Source(
        "walshaw",
        "Walshaw, An essay on piston rings",
        "part 2: pressure from gap, pressures in use",
        "read",
    ),
    Source(
        "unwin", "Unwin, The Elements of Machine Design, part 2", "ring of uniform strength", "read"
    ),
    Source(
        "khurmi", "Khurmi and Gupta, A Textbook of Machine Design", "section 32.9, pistons", "read"
    ),
    Source(
        "chaddock",
        "A published ring design as reported by Walshaw",
        "section D/25 to D/30 with a gap of four thicknesses",
        "read",
    ),
    Source(
        "blake",
        "Blake, text on curved members",
        "p. 318: section against breaking when sprung open",
        "read",
    ),
    Source(
        "bourne",
        "Bourne, A Catechism of the Steam Engine",
        "question 445: turned larger, a piece cut out, turned again while held closed",
        "read",
    ),
    Source(
        "american-engineer",
        "American Engineer, vol. 86 no. 12",
        "blank turned to bore + cut/pi; turned outside and inside, drawn together by straps",
        "read",
    ),
    Source(
        "iso6621",
        "ISO 6621 series, Internal combustion engines - Piston rings",
        "names and symbols only",
        "memory",
    ),
    Source(
        "iapws-if97",
        "IAPWS-IF97, Industrial Formulation 1997 for Water and Steam",
        "region 4, tables 34 to 36",
        "read",
    ),
    Source(
        "iso286",
        "ISO 286-1 and 286-2, limits and fits",
        "IT grades and deviations; over 500 mm in three open tables of ISO 286-2 and IS 919-2",
        "read",
    ),
    Source("iso3", "ISO 3, preferred numbers", "R10", "memory"),
    Source(
        "ring-groove-sheet",
        "A seal maker's page on cast iron rings",
        "width and depth of grooves, piston clearance",
        "read",
    ),
    Source(
        "neutral-line",
        "Plain geometry of a ring, lengths along its neutral line",
        "finished sizes recomputed from the blank by walking the operations one by one in tests/core",
        "derived",
    ),
    Source(
        "expansion",
        "Linear thermal expansion",
        "every part grows in proportion to its size; exact inverses checked in tests",
        "derived",
    ),
    Source(
        "warming-estimate",
        "Estimate of ring and wall warming together",
        "conduction with condensing steam solved in tests/published/test_clearances.py; gives gaps within the range of a published book",
        "derived",
    ),
    Source(
        "wahl",
        "Wahl's factor and the rate of coil springs, as three pages on machine elements print them",
        "factor, 8 F D/(pi d^3), G d^4/(8 D^3 n)",
        "read",
    ),
    Source(
        "heat-colours",
        "A Book of Steam for Engineers (1905), p. 50; Chapman, Workshop Technology part 1, 5th edition",
        "red just visible 525 degC, dull red 700; black red 426 to 593, very dark red 594 to 704, dark red 705 to 814, cherry 815 to 870; both as an encyclopaedia quotes them",
        "read",
    ),
    Source(
        "its-90",
        "International Temperature Scale of 1990, table 1",
        "tin 231.928, zinc 419.527, aluminium 660.323 degC",
        "read",
    ),
    Source(
        "definition",
        "Follows from the definition",
        "nothing to check against but arithmetic",
        "derived",
    ),
    Source(
        "hyperbolic",
        "Hyperbolic expansion with clearance",
        "areas of the stated diagram, checked by numerical integration in tests/core",
        "derived",
    ),
    Source(
        "singh",
        "Singh, Applied Thermodynamics, chapter 12",
        "worked examples of steam engines, read in an open companion of worked solutions",
        "read",
    ),
    Source(
        "joel",
        "Joel, Basic Engineering Thermodynamics, chapter 11",
        "worked examples of steam engines, read in an open companion of worked solutions",
        "read",
    ),
    Source(
        "machinery-70",
        "Machinery's Reference Series no. 70, Steam Engines",
        "steam accounted for by the diagram, worked example",
        "read",
    ),
    Source(
        "lineham",
        "Lineham, Text-book of Mechanical Engineering",
        "p. 884 and appendix VI: missing quantity, and the 1905 trials of the Steam Engine Research Committee",
        "read",
    ),
    Source(
        "iapws-viscosity",
        "IAPWS, Formulation 2008 for the Viscosity of Ordinary Water Substance",
        "equation 11 and table 1, as coded in the iapws library",
        "run",
    ),
    Source(
        "napier",
        "Napier's rule for the flow of steam",
        "W = A p/70: API 520, as the fluids library has it; carried on above three fifths, where both join, and compared with isentropic steam in tests/published",
        "run",
    ),
    Source(
        "zeuner",
        "Zeuner's exponent of expansion",
        "1.035 + 0.1 dryness: Lineham, Text-book of Mechanical Engineering, appendix T; superheated 1.30: a page on nozzles",
        "read",
    ),
    Source(
        "orifice",
        "Flow of a gas through an opening, one or several in a row",
        "isentropic to the throat; checked against CoolProp and fluids in tests/published",
        "derived",
    ),
    Source(
        "film",
        "Laminar flow of a gas in a thin film between faces",
        "checked by numerical integration in tests/core",
        "derived",
    ),
    Source(
        "leak-paths",
        "Ways past a ring, from the geometry of ring, land and groove",
        "an inner ring that covers the joints from behind was used for this reason: Lardner, The Steam Engine, chapter VIII",
        "derived",
    ),
    Source(
        "ring-load",
        "Balance of the pressures on a ring",
        "full pressure behind, falling pressure on the face",
        "derived",
    ),
    Source(
        "land-plate",
        "A land as a ring plate built in at its root",
        "checked by Young and Budynas, table 11.2, and by finite elements",
        "derived",
    ),
    Source(
        "steam-oil",
        "Two articles on steam cylinder oil for live steam",
        "wet steam washes mineral oil off; a little tallow makes it cling",
        "read",
    ),
    Source("geometry", "Geometry", "no source needed", "derived"),
    Source(
        "wear",
        "Gap and radius of a wearing ring",
        "gap grows by 2 pi times the wear of the radius",
        "derived",
    ),
    Source(
        "mehrotra",
        "Mehrotra, On the implementation of a primal-dual interior point method, SIAM Journal on Optimization 2 (1992)",
        "predictor and corrector, as two open solvers quote it",
        "read",
    ),
    Source(
        "slit-geometry",
        "Geometry of the slit, bridge and ends, derived for this project",
        "checked by a geometry library in tests",
        "derived",
    ),
    Source(
        "torsion",
        "Saint-Venant torsion of a rectangle",
        "Timoshenko and Goodier, torsion of rectangular bars, as open programmes and a manual of structures print the table",
        "read",
    ),
    Source(
        "gilmore-gomory",
        "Gilmore and Gomory, A linear programming approach to the cutting-stock problem, Operations Research 9 (1961)",
        "abstract: columns created by a knapsack",
        "read",
    ),
    Source(
        "cutting-search",
        "Search and bounds for cutting bars, derived for this project",
        "checked against a mixed integer programming solver in tests/core",
        "derived",
    ),
    Source(
        "compressor-book",
        "Reciprocating Compressors: Operation and Maintenance, pages 228, 259 and 272",
        "side clearance 0.006 in to the inch of width, 0.002 at least; gap 0.002 in to the inch of bore; bores rebored at 0.001 of it out of round",
        "read",
    ),
    Source(
        "endurance-page",
        "An encyclopaedia on the fatigue limit",
        "0.4 of the tensile strength for iron and copper alloys",
        "read",
    ),
    Source(
        "steam-o-rings",
        "A supplier's page on O-rings in steam",
        "EPDM to 150 degC, beyond that special rubbers",
        "read",
    ),
    Source(
        "tell-tale-pages",
        "Pages on melting points, crayons and thermocouples",
        "lead 327.5, salt 801, solder 183 to 238 degC; crayons within 1 %, type K within 0.75 %",
        "read",
    ),
    Source(
        "rebore-report",
        "A preservation group's report on a full-size locomotive",
        "cylinders rebored at 0.060 in of taper or out of round",
        "read",
    ),
    Source(
        "abramowitz-stegun",
        "Abramowitz and Stegun, Handbook of Mathematical Functions",
        "26.2.23 within 4.5e-4, as open programmes quote it",
        "read",
    ),
    Source(
        "memory",
        "General engineering knowledge",
        "from memory, not checked against a copy",
        "memory",
    ),
    Source("practice", "Common practice of the trade", "no source", "practice"),
)
SOURCES += TABLES
