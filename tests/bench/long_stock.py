"""A cut list that takes long to find, for all that asks what heavy work does to the rest."""

# Twenty sets out of twenty bars, looked for long: 0.1 to 1 s of work by the machine.
LONG_STOCK = {
    "sets": [
        {
            "outside_diameter": 60 + 3 * at,
            "inside_diameter": 45,
            "part_length": 3.1 + 0.73 * at,
            "count": 3 + at % 9,
        }
        for at in range(20)
    ],
    "bars": [{"name": "b%d" % at, "diameter": 130, "length": 71 + 17.3 * at} for at in range(20)],
    "cutting_effort": "thorough",
}
