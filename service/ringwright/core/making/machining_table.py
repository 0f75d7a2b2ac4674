"""Cutting speeds, feeds and saw sizes as published, by operation, tool and what is cut.

Each entry is (low, high, key of the source). Speeds in m/min, feeds in mm.
"""

OPERATIONS = (
    "turn-rough", "turn-finish", "bore-rough", "bore", "face", "part", "drill", "mill", "slit-saw"
)  # fmt: skip

# What is cut, by key of the material; the three PTFE mixtures cut alike, and so do the grey irons.
CUTS_AS = {
    "grey-iron": "grey-iron",
    "grey-iron-200": "grey-iron",
    "grey-iron-250": "grey-iron",
    "grey-iron-300": "grey-iron",
    "ductile-iron": "ductile-iron",
    "phosphor-bronze": "bronze",
    "phosphor-bronze-drawn": "bronze",
    "gunmetal": "bronze",
    "brass": "bronze",
    "steel": "steel",
    "stainless-steel": "stainless-steel",
    "aluminium": "aluminium",
    "filled-ptfe-carbon": "plastic",
    "filled-ptfe-bronze": "plastic",
    "filled-ptfe-glass": "plastic",
}

# High-speed steel [m/min]. Ductile iron turns in the slower half of the printed 50 to 150 ft/min.
HSS_SPEEDS = {
    "turn-rough": {
        "grey-iron": (18.0, 25.0, "turning-speeds"),
        "ductile-iron": (15.0, 22.0, "shop-speeds"),
        "bronze": (61.0, 76.0, "bench-lathe-speeds"),
        "steel": (35.0, 45.0, "turning-speeds"),
        "stainless-steel": (9.0, 18.0, "teaching-speeds"),
        "aluminium": (150.0, 200.0, "turning-speeds"),
        "plastic": (60.0, 120.0, "shop-reference"),
    },
    "turn-finish": {
        "grey-iron": (30.0, 35.0, "turning-speeds"),
        "ductile-iron": (25.0, 30.0, "shop-speeds"),
        "bronze": (76.0, 152.0, "shop-speeds"),
        "steel": (50.0, 70.0, "turning-speeds"),
        "stainless-steel": (18.0, 55.0, "shop-speeds"),
        "aluminium": (200.0, 250.0, "turning-speeds"),
        "plastic": (60.0, 120.0, "shop-reference"),
    },
    "drill": {
        "grey-iron": (25.0, 35.0, "teaching-speeds"),
        "ductile-iron": (21.0, 30.0, "iron-drilling"),
        "bronze": (60.0, 75.0, "teaching-speeds"),
        "steel": (30.0, 36.0, "teaching-speeds"),
        "stainless-steel": (6.0, 15.0, "teaching-speeds"),
        "aluminium": (60.0, 76.0, "shop-speeds"),
        "plastic": (20.0, 75.0, "teaching-speeds"),
    },
    "mill": {
        "grey-iron": (15.0, 30.0, "teaching-speeds"),
        "ductile-iron": (15.0, 30.0, "shop-speeds"),
        "bronze": (60.0, 150.0, "teaching-speeds"),
        "steel": (25.0, 35.0, "teaching-speeds"),
        "stainless-steel": (9.0, 20.0, "teaching-speeds"),
        "aluminium": (60.0, 150.0, "teaching-speeds"),
        "plastic": (20.0, 160.0, "teaching-speeds"),
    },
    # Grey iron by a sawing table; the rest 40 % under milling, as the milling table says of slots.
    "slit-saw": {
        "grey-iron": (17.0, 25.0, "saw-speeds"),
        "ductile-iron": (9.0, 18.0, "teaching-speeds"),
        "bronze": (36.0, 90.0, "teaching-speeds"),
        "steel": (15.0, 21.0, "teaching-speeds"),
        "stainless-steel": (5.4, 12.0, "teaching-speeds"),
        "aluminium": (36.0, 90.0, "teaching-speeds"),
        "plastic": (12.0, 96.0, "teaching-speeds"),
    },
}

# Cemented carbide [m/min] where a table has it; elsewhere twice the speed of high-speed steel.
CARBIDE_SPEEDS = {
    "turn-rough": {
        "grey-iron": (60.0, 90.0, "turning-speeds"),
        "steel": (150.0, 200.0, "turning-speeds"),
        "aluminium": (600.0, 800.0, "turning-speeds"),
    },
    "turn-finish": {
        "grey-iron": (90.0, 130.0, "turning-speeds"),
        "steel": (220.0, 300.0, "turning-speeds"),
    },
}
CARBIDE_OVER_HSS = 2.0  # shop-speeds

# Operations that have no row of their own: (row they follow, share of its low, share of its high,
# source of the shares).
FOLLOWS = {
    "bore-rough": ("turn-rough", 0.8, 1.0, "practice"),
    "bore": ("turn-rough", 0.8, 1.0, "practice"),
    "face": ("turn-rough", 1.0, 1.0, "practice"),
    "part": ("turn-rough", 0.5, 1.0, "practice"),
}

# What a light lathe stands with carbide [m/min]; common practice.
LIGHT_CARBIDE_CAP = 90.0

# Feed per turn, or per tooth for mill and slit-saw [mm]. Light roughing: 0.004 in a turn.
FEEDS = {
    "turn-rough": (0.2, 0.3, "turning-speeds"),
    "turn-finish": (0.05, 0.1, "turning-speeds"),
    "bore-rough": (0.1, 0.2, "boring-bars"),
    "bore": (0.05, 0.1, "turning-speeds"),
    "face": (0.05, 0.1, "turning-speeds"),
    "part": (0.03, 0.05, "lathe-manual"),
    "mill": (0.05, 0.13, "shop-reference"),
    "slit-saw": (0.013, 0.025, "cutter-feeds"),
}
LIGHT_ROUGHING_FEED = (0.1, 0.1, "bench-lathe-speeds")
PER_TOOTH = ("mill", "slit-saw")

# Drilling with high-speed steel, feed per turn [mm] at drill diameters of 6, 12, 18 and 25 mm.
DRILL_DIAMETERS = (6.0, 12.0, 18.0, 25.0)
DRILL_FEEDS = {
    "grey-iron": (0.13, 0.18, 0.25, 0.31),
    "ductile-iron": (0.13, 0.18, 0.25, 0.31),
    "bronze": (0.20, 0.25, 0.41, 0.51),
    "steel": (0.20, 0.25, 0.41, 0.51),
    "stainless-steel": (0.13, 0.18, 0.25, 0.31),
    "aluminium": (0.30, 0.40, 0.61, 0.81),
    "plastic": (0.10, 0.15, 0.20, 0.25),
}

# Depth of cut on the radius [mm]: (light machine, rigid machine). Roughing 2 to 3 mm on iron and
# finishing 0.025 to 0.075 (turning-speeds); 0.03 in on a light lathe (shop-speeds).
DEPTHS = {
    "turn-rough": (0.75, 2.0),
    "turn-finish": (0.075, 0.075),
    "bore-rough": (0.5, 1.5),
    "bore": (0.5, 1.0),
    "face": (0.5, 1.0),
    "mill": (0.5, 1.5),
}

# Minutes to bring up, set, measure and withdraw the tool, once a pass: estimate of the trade.
HANDLING = {
    "turn-rough": 0.5,
    "turn-finish": 1.5,
    "bore-rough": 0.5,
    "bore": 1.0,
    "face": 0.5,
    "part": 1.0,
    "drill": 0.5,
    "mill": 1.0,
    "slit-saw": 2.0,
}

SAW_PITCH = 4.0  # pitch of the teeth of the coarser saws, about [mm]; from memory
