"""The title of each sheet: its number within the set of the bore, and what its part is made of."""

import pytest

from drawing.test_sheet_parts import job_of
from ringwright.core.drawing import catalogue
from ringwright.core.properties.materials import material

LABELS = {"Scale", "Projection"}
# By the order of the set; what a ring has not is left out, and leaves its number free.
NUMBERED = [("ring-closed", 1), ("ring-free", 2), ("blank", 5), ("pot", 12), ("piston", 19)]


def entry(job, part, label):
    """What stands in the title block under that label, "" for nothing."""
    frame = catalogue.sheets(job, part)[0].frame
    texts = [one.text for one in frame if getattr(one, "text", "")]
    after = texts[texts.index(label) + 1]
    return "" if after in LABELS else after


@pytest.mark.parametrize(("part", "number"), NUMBERED)
def test_a_sheet_is_numbered_by_bore_and_place(part, number):
    assert entry(job_of(bore=80.0), part, "Drawing") == "80.00-%d" % number
    inch = job_of(bore=79.375, dimensions="inch")
    assert entry(inch, part, "Drawing") == "3.125-%d" % number


def test_what_each_part_is_made_of():
    job = job_of(bore=80.0, ring_material="ductile-iron", piston_material="aluminium")
    for part, metal in (("ring-closed", "ductile-iron"), ("blank", "ductile-iron"),
                        ("piston", "aluminium")):  # fmt: skip
        assert entry(job, part, "Material") == material(metal).title
    assert entry(job, "pot", "Material") == "Grey cast iron or mild steel"
    # Nobody makes anything of these.
    for part in ("cylinder-section", "section-window"):
        assert entry(job, part, "Material") == ""


def test_an_outer_clamp_only_where_the_inside_is_bored_clamped():
    def parts(job):
        return {key for key, part in catalogue.PARTS.items() if part.serves(job)}

    assert "outer-clamp" in parts(job_of(bore=80.0, finishing="band"))
    assert "outer-clamp" not in parts(job_of(bore=80.0))
