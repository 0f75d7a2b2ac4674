"""Bibliography: everything the figures rest on, one key each.

basis says how far it was checked: "read" (the figure was read in a copy of the source), "run"
(given by a general-purpose library that was run), "memory" (not checked against a copy),
"practice" (common practice of the trade, no source), "derived" (worked out for this project and
checked by independent means named in `where`).
"""

from collections import namedtuple

Source = namedtuple("Source", ("key", "title", "where", "basis"))

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
    Source("en1561", "EN 1561, grey cast irons", "expansion, 20 to 200 and 400 degC", "memory"),
    Source(
        "tribology-handbook",
        "Tribology Handbook",
        "table 17.2 ring materials, table 17.5 filled PTFE",
        "read",
    ),
    Source(
        "callister",
        "Callister, Materials Science and Engineering",
        "appendix B, tables B.1 density, B.2 modulus, B.3 Poisson, B.4 strength and B.6 expansion",
        "read",
    ),
    Source(
        "grey-iron-sheet",
        "A foundry's and a merchant's sheet for grey iron quoting EN 1561",
        "grades 200 to 300: modulus, tensile and bending strength, Poisson 0.26, density",
        "read",
    ),
    Source(
        "ductile-iron-sheet",
        "A foundry's data sheet for ductile iron quoting EN 1563",
        "grade 500: proof stress 320 MPa; Poisson 0.28",
        "read",
    ),
    Source(
        "iso6621-3-sheet",
        "A ring maker's list of materials by the classes of ISO 6621-3",
        "class 10, plain grey iron: bending strength at least 350 MPa, modulus 85 to 115 GPa",
        "read",
    ),
    Source(
        "tin-bronze-sheet",
        "A data sheet for cast tin bronze UNS C90700",
        "modulus, expansion 20 to 200 degC, density, strengths",
        "read",
    ),
    Source(
        "drawn-bronze-sheet",
        "Data sheets of three stockholders for drawn tin bronze CW451K (C51000), and of a database "
        "for CW452K",
        "strengths of 18 to 40 mm rod, expansion, density, modulus; hottest by the database",
        "read",
    ),
    Source(
        "gunmetal-sheet",
        "Two data sheets for gunmetal UNS C90500",
        "modulus, expansion 20 to 300 degC, density, strengths",
        "read",
    ),
    Source(
        "filled-ptfe-sheet",
        "Tables of three makers of filled PTFE",
        "density and tensile strength by filler; with glass 758 MPa in compression, 1310 in tension; useful to 204 degC",
        "read",
    ),
    Source(
        "materials-course",
        "An open course of mechanics, table of material properties",
        "Poisson's ratios",
        "read",
    ),
    Source(
        "stainless-sheet",
        "Two data sheets for stainless steel 304",
        "proof stress 205, tensile 515 at least, 600 typical",
        "read",
    ),
    Source(
        "aluminium-sheet",
        "A stockholder's extract of EN 754-2, and Callister",
        "6061 T6: proof stress 240, tensile 290; typical 310",
        "read",
    ),
    Source(
        "brass-sheet",
        "Three data sheets for brass UNS C36000",
        "modulus, density, tensile by temper; proof stress half hard",
        "read",
    ),
    Source(
        "valve-metals",
        "A table of valve metals and a page on them, by temperature",
        "steam bronze to 450 F, C90500 to 400 F, carbon steel to 800 F",
        "read",
    ),
    Source(
        "ring-groove-sheet",
        "A seal maker's page on cast iron rings",
        "width and depth of grooves, piston clearance",
        "read",
    ),
    Source(
        "en1993-1-2",
        "EN 1993-1-2, Design of steel structures - Structural fire design",
        "3.4.1.1 elongation of carbon steel, annex C stainless, as three open programmes quote them",
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
        "stress-relief-reports",
        "Reports on stress relief of grey iron: DTIC AD0620556; two foundries' notes; a metallurgist's letter",
        "useless at 600 F, very slow below 1000 F, the first hour does most; 90 to 95 % in 2 to 8 h at 500 to 550 degC",
        "read",
    ),
    Source(
        "turned-texture",
        "Three pages on the texture of turned work",
        "Ra = f^2/(32 r), Rz = f^2/(8 r); measured 1.5 to 3 times that",
        "read",
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
        "grey-iron-heat",
        "ASM Handbook volume 4, heat treating of grey iron, as quoted; a makers' forum on rings set by heat",
        "short times to 595 degC change nothing, then carbide breaks down ever faster to 760; rings held an hour at 1150 F set fully",
        "read",
    ),
    Source(
        "turning-speeds",
        "A published reference table of cutting conditions for turning",
        "cast iron, steel and aluminium, high-speed steel and carbide",
        "read",
    ),
    Source(
        "teaching-speeds",
        "A college's tutorial table of cutting speeds and feeds",
        "drilling, turning and milling with high-speed steel; slotting 40 % slower",
        "read",
    ),
    Source(
        "shop-speeds",
        "A workshop table, Machine tool speeds and feeds",
        "lathe, drill and mill by metal; carbide twice high-speed steel",
        "read",
    ),
    Source(
        "bench-lathe-speeds",
        "A table of cutting speeds for bench lathes",
        "turning by alloy at 0.004 in a turn",
        "read",
    ),
    Source(
        "saw-speeds",
        "The manual of a circular metal saw",
        "grey iron by section, high-speed steel blade",
        "read",
    ),
    Source(
        "lathe-manual",
        "A government manual on the lathe, 1940s",
        "parting: feed about 0.002 in a turn",
        "read",
    ),
    Source(
        "iso2296",
        "ISO 2296 and DIN 1837, metal slitting saws",
        "diameters, thicknesses and bores",
        "memory",
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
        "iron-fatigue",
        "White, Gray Iron: fatigue limit in reversed bending",
        "0.35 of the least tensile strength",
        "read",
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
        "iron-bar-table",
        "One producer's table of continuous-cast iron bar and tube",
        "stock over nominal by diameter with its variation; least walls; the example 3.000 by 2.000 in, sent as 3.110 by 1.750",
        "read",
    ),
    Source(
        "bronze-bar-table",
        "One caster's table of continuous-cast tin bronze",
        "stock on the outside and in the bore by diameter",
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
