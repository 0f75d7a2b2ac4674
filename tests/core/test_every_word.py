"""A reader's list of the route card: what each operation must tell, for every kind of ring, and
that no word of it stands against its figures.

What a card must tell to be worked from is common practice, no source; so is each rule below that
names none.
"""

import itertools
import re

import pytest

from ringwright.core import calculations
from ringwright.core.cautions import CAUTIONS, DUST_OF
from ringwright.core.making.route_text import TEXT
from ringwright.core.problems import InputProblem
from ringwright.core.properties.materials import for_use, material

TYPES = ("plain", "double-turn")
CUTS = ("angled-45", "angled-60", "square", "stepped")
SETTINGS = ("bound", "sprung", "spread")
FINISHINGS = ("closing-ring", "forced-round", "band")
BORES = (20.0, 24.0, 40.0, 79.375, 150.0, 300.0, 600.0)
METALS = for_use("ring")

# What an operation must tell besides how it is held, with what, and what to check: h how the work
# is held, s a size, l a limit of a size, b what to beware of.
LIST = {
    "survey": "hsb",
    "face-bar": "hsb",
    "drill": "hsb",
    "turn-rough": "hslb",
    "bore-rough": "hsb",
    "bore": "hslb",
    "part-off": "hsb",
    "face-blank": "hslb",
    "hold-stick": "hsb",
    "mark-out": "hsb",
    "slit": "hslb",
    "slit-stick": "hslb",
    "saw-off": "hslb",
    "saw-wedges": "hsb",
    "saw-ends": "hslb",
    "saw-end": "hslb",
    "saw-step": "hslb",
    "deburr": "hb",
    "turn-through": "hsb",
    "put-on-former": "hslb",
    "put-on-former-bound": "hslb",
    "spread": "hslb",
    "soak": "hsb",
    "take-off": "hb",
    "turn-back": "hb",
    "measure-free-gap": "hslb",
    "face-step": "hslb",
    "face-sides": "hslb",
    "clamp": "hslb",
    "clamp-forced": "hslb",
    "clamp-band": "hslb",
    "turn-finish": "hslb",
    "bore-clamped": "hslb",
    "dress-ends": "hslb",
    "inspect": "hslb",
    "fit": "hslb",
    "fit-double": "hslb",
}
# What the hand reads with, roughest first, and the closest limits it can tell [mm]; common
# practice, no source.
READS = (("rule", 0.5), ("caliper", 0.1))


def requests():
    """Every kind of ring in some bore, every bore and metal in some kind of ring."""
    found = []
    kinds = itertools.product(TYPES, CUTS, SETTINGS, FINISHINGS)
    families = ("grey-iron", "phosphor-bronze-drawn", "filled-ptfe-carbon")
    for at, (kind, cut, setting, finishing) in enumerate(kinds):
        for metal in families:
            found.append(
                {
                    "bore": BORES[at % len(BORES)],
                    "ring_type": kind,
                    "end_cut": cut,
                    "setting": setting,
                    "finishing": finishing,
                    "ring_material": metal,
                }
            )
    for bore, metal, kind in itertools.product(BORES, METALS, TYPES):
        found.append({"bore": bore, "ring_material": metal, "ring_type": kind})
    for bore, kind in itertools.product((15.875, 25.4, 79.375, 152.4, 304.8), TYPES):
        found.append({"bore": bore, "ring_type": kind, "bar_sizes": "inch"})
        found.append({"bore": bore, "ring_type": kind, "bar_form": "solid"})
    for at, (metal, cut) in enumerate(itertools.product(METALS, CUTS[:3])):
        found.append(
            {
                "bore": BORES[at % len(BORES)],
                "ring_material": metal,
                "ring_type": "double-turn",
                "end_cut": cut,
                "slit_on_stick": True,
            }
        )
    return found


def carded():
    """(request, card) of every request of the list that can be worked."""
    found = []
    for request in requests():
        try:
            found.append((request, calculations.run("route", request)))
        except InputProblem:
            continue
    return found


@pytest.fixture(scope="module")
def cards():
    found = carded()
    assert len(found) > 0.9 * len(requests())
    return found


def rows(cards):
    for request, card in cards:
        for row in card["operations"]:
            yield request, card, row


def words(row):
    """All that a person reads of an operation but its sizes."""
    told = [row["title"], row["hold"], row["tool"], row["text"], row["check"]]
    return " ".join(told + [caution["text"] for caution in row["cautions"]])


def named(row):
    return {size["name"]: size for size in row["sizes"]}


def degrees(request):
    cut = request.get("end_cut", "angled-45")
    return {"angled-45": 45.0, "angled-60": 60.0}.get(cut, 90.0)


def test_every_operation_tells_all_that_it_must(cards):
    seen = set()
    for request, _, row in rows(cards):
        must = LIST[row["key"]]
        seen.add(row["key"])
        for part in ("title", "tool", "text", "check"):
            assert row[part], (request, row["key"], part)
        assert row["hold"] if "h" in must else True, (request, row["key"])
        assert row["cautions"] if "b" in must else True, (request, row["key"])
        assert row["sizes"] if "s" in must else True, (request, row["key"])
        if "l" in must:
            assert any("limits" in size for size in row["sizes"]), (request, row["key"])
        for size in row["sizes"]:
            assert size["label"] and size["reading"], (request, row["key"], size["name"])
    assert seen == set(TEXT) == set(LIST)


def test_words_are_whole_sentences_without_numbers_of_their_own(cards):
    """Numbers are sizes, in the units of the job; only the directions of the survey are words."""
    for request, _, row in rows(cards):
        for part in ("hold", "text", "check"):
            told = row[part]
            assert told[0].isupper() and told.endswith("."), (request, row["key"], told)
            assert "  " not in told and " ," not in told and ",." not in told, told
            for sentence in re.split(r"(?<=[.:;]) ", told):
                assert sentence.strip(), told
        digits = re.findall(r"\d+", row["hold"] + row["text"] + row["check"])
        assert digits == (["45"] if row["key"] == "survey" else []), (row["key"], digits)


def test_how_a_size_is_taken_can_tell_its_limits(cards):
    """Nobody reads a hundredth with a rule, nor a clearance with a caliper."""
    for request, _, row in rows(cards):
        for size in row["sizes"]:
            if size["unit"] != "mm":
                continue
            reading = size["reading"]
            here = (request, row["key"], size["name"], reading)
            for tool, closest in READS:
                if not reading.startswith(tool):
                    continue
                if size["name"] == "spacer_width":
                    # Its limits are told square across its faces as well, by micrometer.
                    assert "spacer_across" in named(row), here
                    continue
                if "limits" in size:
                    low, high = (size["limits"][end]["value"] for end in ("lower", "upper"))
                    assert high - low >= closest or size["name"] == "free_gap", here
                assert size["value"] >= closest, here
            for place in ("inside", "outside"):
                if "along the " + place in size["label"]:
                    assert "along the " + place in reading, here
            if "gap" in size["name"] and "limits" in size and size["name"] != "free_gap":
                assert reading.startswith("feeler"), here


def test_the_bore_is_surveyed_as_the_survey_asks(cards):
    """Three heights, four directions: the words of the input, of the finding, and of the card."""
    field = next(
        one for one in calculations.CALCULATIONS["bore-survey"].fields if one.name == "readings"
    )
    assert "three heights" in field.meaning and "four directions" in field.meaning
    for _, card in cards:
        survey = card["operations"][0]
        assert survey["key"] == "survey"
        assert "three heights in four directions, 45 degrees apart" in survey["text"]


def test_the_bar_is_held_by_as_much_as_is_left_on_the_stick(cards):
    for request, card in cards:
        row = card["operations"][1]
        grip = named(row)["chucking_piece"]["value"]
        assert row["key"] == "face-bar" and grip >= 20.0
        if request == {"bore": 79.375, "ring_type": "plain", "bar_sizes": "inch"}:
            blank = {
                "outside_diameter": named(card["operations"][2])["rough_outside_diameter"]["value"],
                "inside_diameter": 40.0,
                "part_length": 8.0,
                "count": 1,
            }
            chosen = calculations.run("stock", {"sets": [blank]})["chosen"]
            left = next(one["value"] for one in chosen if one["input"] == "chucking_piece")
            assert grip == left
            other = calculations.run("route", {**request, "chucking_piece": 31.0})
            assert named(other["operations"][1])["chucking_piece"]["value"] == 31.0


def test_the_angle_of_the_ends_stands_where_they_are_cut(cards):
    for request, card in cards:
        told = {
            row["key"]: named(row)["end_angle"]["value"]
            for row in card["operations"]
            if "end_angle" in named(row)
        }
        stepped = request["ring_type"] == "plain" and request.get("end_cut") == "stepped"
        cut = {"saw-end"} if request["ring_type"] == "plain" else {"mark-out", "saw-ends"}
        assert told == ({} if stepped else dict.fromkeys(cut, degrees(request))), request


def test_words_about_the_angle_are_those_of_its_ends(cards):
    for request, _, row in rows(cards):
        said = row["text"] + row["check"]
        if degrees(request) == 90.0:
            assert (
                "They lean" not in said and "angle given" not in said and "marked angle" not in said
            )
            if row["key"] in ("mark-out", "saw-ends", "saw-end", "saw-step"):
                assert "square" in said, (request, row["key"])
        elif row["key"] in ("mark-out", "saw-ends", "saw-end"):
            assert "angle" in said and "square across" not in said, (request, row["key"])


def test_cuts_are_counted_as_the_words_have_it(cards):
    for request, _, row in rows(cards):
        passes = row.get("passes", 1)
        assert passes == 1 or "one cut" not in words(row), (request, row["key"])
        if row["key"] == "bore":
            assert passes == 2  # "two light cuts", which roughing left
        if row["key"] == "turn-finish":
            assert passes >= 2  # "the last two cuts are light"


def test_what_is_cut_again_is_not_called_finished(cards):
    for request, card in cards:
        by_key = {row["key"]: row for row in card["operations"]}
        again = "bore-clamped" in by_key
        said = by_key["bore"]["text"]
        assert ("finished inside" in said) == (not again), request
        assert ("not cut again" in said) == (not again), request


def test_the_blank_is_held_by_what_it_goes_into(cards):
    """Unsawn it is larger than the pot and the closing ring; sawn it is shut into them."""
    for request, card in cards:
        by_key = {row["key"]: row for row in card["operations"]}
        if request.get("slit_on_stick"):
            assert "face-blank" not in by_key and "blank-jaws" not in str(card)
            continue
        blank = by_key["face-blank"]
        assert "jaws" in blank["tool"] and "pot" not in blank["tool"]
        assert "in soft jaws" in blank["hold"].lower() and blank["tools"] == ["blank-jaws"]
        jaws = named(blank)["blank_jaws_bore"]["value"]
        facing = by_key.get("face-step") or by_key["face-sides"]
        assert named(facing)["pot_bore"]["value"] < jaws, request
        closing = named(by_key.get("clamp") or by_key.get("clamp-forced") or {"sizes": []})
        if closing:
            assert closing["closing_ring_bore"]["value"] < jaws, request


def test_both_gaps_of_a_double_turn_ring_are_told_and_a_plain_one_has_one(cards):
    for request, _, row in rows(cards):
        double = request["ring_type"] == "double-turn"
        for size in row["sizes"]:
            if size["name"] in ("free_gap", "clamped_gap_reading", "closed_gap_reading"):
                assert ("of each turn" in size["label"]) == double, (request, size["label"])
        said = row["text"] + row["check"]
        if row["key"] in ("measure-free-gap", "dress-ends", "clamp", "clamp-band", "clamp-forced"):
            assert ("each turn" in said or "oth gaps" in said) == double, (request, row["key"])


def test_ends_are_filed_while_they_lie_open_and_again_only_if_the_gap_asks(cards):
    for request, card in cards:
        by_key = {row["key"]: row for row in card["operations"]}
        opened = by_key.get("turn-through")
        again = by_key["dress-ends"]["text"]
        assert "only where" in again and "too small" in again
        assert ("filed while they lay open" in again) == (opened is not None), request
        if opened:
            assert "lie open now: file them" in opened["text"]


def test_metal_that_heat_does_not_set_is_not_told_to_be_set(cards):
    """Filled PTFE: pressed by an expander; no former, no heat, no spring of its own to measure."""
    for request, card in cards:
        plastic = material(request.get("ring_material", "grey-iron")).family == "plastic"
        keys = {row["key"] for row in card["operations"]}
        setting = {"spread", "put-on-former", "put-on-former-bound", "soak", "take-off"}
        setting |= {"turn-through", "turn-back", "measure-free-gap"}
        assert bool(keys & setting) != plastic, request
        ring = {name: value for name, value in request.items() if name[:4] != "bar_"}
        tools = calculations.run("tooling", ring)
        assert bool({"former", "spacer"} & {one["tool"] for one in tools["tools"]}) != plastic
        used = {tool for row in card["operations"] for tool in row["tools"]}
        assert used == {one["tool"] for one in tools["tools"]}, request
        cautions = {one["key"] for one in card["cautions"] + tools["cautions"]}
        assert ("hot-work" in cautions) != plastic
        if not plastic:
            continue
        fitting = card["operations"][-1]
        assert "expander" in fitting["tool"] and "expander" in fitting["text"]
        for row in card["operations"]:
            said = words(row).lower().replace("heat of the cut", "")
            assert not re.search(r"heat|furnace|former|spacer|skin|own spring", said), (
                request,
                row,
            )
            assert not {"free_gap", "scale_reading"} & set(named(row))
        assert "pressing" not in next(
            one["why"] for one in card["findings"] if one["check"] == "limits"
        )


def test_the_dust_to_beware_of_is_that_of_its_metal(cards):
    for request, card in cards:
        family = material(request.get("ring_material", "grey-iron")).family
        dust = {one["key"] for one in card["cautions"]} & set(DUST_OF.values())
        assert dust == {DUST_OF[family]}, request
        said = " ".join(words(row) for row in card["operations"]).lower()
        for metal, word in (("iron", "iron"), ("bronze", "bronze"), ("plastic", "ptfe")):
            assert metal == family or not re.search(r"\b%s\b" % word, said), (request, word)
    # Each caution of dust says what it is of, and to keep it out of the lungs.
    for key in DUST_OF.values():
        assert "lungs" in CAUTIONS[key]


def test_drawn_bronze_is_told_where_its_strength_ends(cards):
    """Over 350 degC drawn bronze is soft for good (the table of materials says so as well)."""
    told = 0
    for request, _, row in rows(cards):
        if row["key"] != "soak":
            continue
        drawn = request.get("ring_material") == "phosphor-bronze-drawn"
        assert ("soft for good" in row["text"]) == drawn, request
        sizes = named(row)
        assert sizes["soak_temperature"]["value"] <= sizes["soak_hottest"]["value"]
        if drawn:
            told += 1
            assert sizes["soak_hottest"]["value"] == 350.0
            assert "350 degC" in material("phosphor-bronze-drawn").note
    assert told


def test_former_and_spacer_are_called_by_what_the_ring_has(cards):
    for request, card in cards:
        keys = {row["key"] for row in card["operations"]}
        other = "former" if "spread" in keys else "spacer"
        for row in card["operations"]:
            said = words(row).lower()
            assert other not in said, (request, row["key"], other)


def test_a_ring_with_a_step_is_told_how_it_is_seated(cards):
    """The metal between the two sides after the turns have closed up, walked round by hand.

    The turn that leaves the bridge at one end lies on the other all the way round, so both wind
    from half a slit above the middle at the bridge to half a slit under it at the other end of
    the turn: under the free end beside the bridge a whole slit is missing, opposite half of one.
    """
    for request, card in cards:
        by_key = {row["key"]: row for row in card["operations"]}
        row = by_key.get("face-step")
        assert (row is not None) == (request["ring_type"] == "double-turn")
        if row is None:
            assert "strip" not in by_key["face-sides"]["hold"]
            continue
        slit = named(by_key.get("slit") or by_key["slit-stick"])["slit_width"]["value"]
        band = named(by_key["mark-out"])["band_width"]["value"]
        steps = 360
        under = [0.5 * slit - slit * at / steps - band for at in range(steps + 1)]
        lowest = min(under)
        sizes = named(row)
        assert sizes["thick_strip"]["value"] == pytest.approx(under[0] - lowest)
        assert sizes["thin_strip"]["value"] == pytest.approx(under[steps // 2] - lowest)
        assert "bridge down" in row["hold"] and "true and unbent" in row["hold"]
        assert "strips" in row["tool"] and "Take the strips out" in row["text"]
        # So much comes off each side at its highest: passes of the card take that.
        highest = 0.5 * slit + band - 0.5 * sizes["ring_width"]["value"]
        assert row["passes"] * 0.5 >= 2.0 * highest - 1e-9, request


def test_words_of_the_bar_are_those_of_its_bar(cards):
    for request, card in cards:
        by_key = {row["key"]: row for row in card["operations"]}
        said = by_key["face-bar"]["text"]
        solid = "drill" in by_key
        rough = by_key.get("bore-rough", {"text": ""})["text"]
        if solid:
            assert "core" not in rough, request
        if "casting" in said:
            assert request["bore"] >= 300.0 and "bar" not in said


def test_a_press_on_the_scale_has_its_weight(cards):
    """A kilogram weighs 9.80665 N (its definition); the force is sizing's."""
    for request, card in cards:
        row = next(row for row in card["operations"] if row["key"] == "inspect")
        size = named(row).get("scale_reading")
        assert (size is not None) == ("scale" in row["tool"]), request
        if size and request["bore"] == 150.0:
            card_only = ("bar_sizes", "bar_form", "slit_on_stick")
            ring = {name: value for name, value in request.items() if name not in card_only}
            force = calculations.run("sizing", ring)["figures"]["diametral_force"]["value"]
            assert size["value"] * 9.80665 == pytest.approx(force, rel=1e-9)


def test_a_card_in_inches_says_the_same(client):
    """The words are those of the card in millimetres; every length is an inch length."""
    for ring_type in TYPES:
        request = {"bore": "3 1/8 in", "ring_type": ring_type}
        metric = client.post("/v1/route", json=request).get_json()["operations"]
        inch = client.post("/v1/route?units=inch", json=request).get_json()["operations"]
        for one, other in zip(metric, inch, strict=True):
            for part in ("title", "hold", "tool", "text", "check"):
                assert one[part] == other[part]
            for mm, inches in zip(one["sizes"], other["sizes"], strict=True):
                if mm["unit"] == "mm":
                    assert inches["unit"] == "in"
                    assert inches["value"] * 25.4 == pytest.approx(mm["value"], rel=1e-12)
                    assert ("limits" in mm) == ("limits" in inches)
