"""What a ring is for: bore, metals, steam and heat, and the gap and piston that they ask for."""

from collections import namedtuple

from .. import clearances
from ..catalogue.inputs_ring import PLAIN
from ..problems import unworkable
from ..properties import steam
from ..properties.materials import material
from ..wording import in_a_sentence, length
from . import heat_set

# heat: temperatures and expansion as the functions of `clearances` take them, a dict.
# wall_temperature: of the cylinder in the case that the ring's gap is filed for;
# warming_wall_temperature: half-warm, as a careful driver starts.
Duty = namedtuple(
    "Duty",
    (
        "bore", "ring_type", "turns", "rings", "ring_material", "cylinder", "piston", "modulus",
        "steam_pressure", "saturation", "temperature", "shop", "end_cut", "setting", "finishing",
        "bearing", "warming_wall_temperature", "wall_temperature", "heat", "closed_gap",
    ),
)  # fmt: skip


def duty_of(take, place=""):
    """The Duty that the values ask for.

    take: a Chooser. place: a case of the defaults of the kind of ring, such as inputs_ring.VALVE.
    """
    bore = take.values["bore"]
    ring_type = take("ring_type", case=place)
    turns = 1 if ring_type == PLAIN else 2
    rings = take("rings")
    ring_material = material(take("ring_material"))
    cylinder = material(take("cylinder_material"))
    piston = material(take("piston_material"))
    modulus = take("modulus", ring_material.modulus, of=in_a_sentence(ring_material.title))
    pressure = take("steam_pressure")
    saturation = steam.saturation_temperature(pressure)
    temperature = take("steam_temperature", saturation)
    shop = take("shop_temperature")
    end_cut = take("end_cut", case=place)
    setting = take("setting", case=ring_type)
    finishing = take("finishing")
    heat = {
        "ring_temperature": temperature,
        "shop_temperature": shop,
        "ring_expansion": ring_material.expansion,
    }
    closed_gap = take(
        "closed_gap",
        clearances.usual_closed_gap(
            turns=turns, bore=bore, cylinder_expansion=cylinder.expansion, **heat
        ),
        case=ring_type,
    )
    return Duty(
        bore=bore,
        ring_type=ring_type,
        turns=turns,
        rings=rings,
        ring_material=ring_material,
        cylinder=cylinder,
        piston=piston,
        modulus=modulus,
        steam_pressure=pressure,
        saturation=saturation,
        temperature=temperature,
        shop=shop,
        end_cut=end_cut,
        setting=setting,
        finishing=finishing,
        bearing=heat_set.bearing(setting, finishing),
        warming_wall_temperature=clearances.starting_wall_temperature(temperature, shop),
        wall_temperature=clearances.filing_wall_temperature(turns, temperature, shop),
        heat=heat,
        closed_gap=closed_gap,
    )


def piston_diameter(take, duty):
    """Diameter of the piston, cold [mm]: given, or what does not seize on a half-warm bore.

    take: a Chooser. duty: a Duty. Raises InputProblem for one that does not belong to the bore.
    """
    bore = duty.bore
    clearance = clearances.piston_clearance(
        bore=bore,
        piston_expansion=duty.piston.expansion,
        cylinder_expansion=duty.cylinder.expansion,
        piston_temperature=duty.temperature,
        cylinder_temperature=duty.warming_wall_temperature,
        shop_temperature=duty.shop,
        margin=clearances.running_piston_clearance(bore),
    )
    diameter = take("piston_diameter", bore - clearance)
    if not 0.8 * bore < diameter < bore:
        raise unworkable(
            "piston_diameter",
            "the piston does not belong to this bore",
            "give a diameter a little less than the bore of " + length(bore),
            value=diameter,
            lowest=0.8 * bore,
            highest=bore,
        )
    return diameter


def side_clearance(duty, width):
    """Play of a ring of that width in its groove, cold [mm]. duty: a Duty. width [mm]."""
    return clearances.side_clearance(
        ring_width=width,
        piston_expansion=duty.piston.expansion,
        piston_temperature=duty.temperature,
        margin=clearances.running_side_clearance(duty.bore)[0],
        **duty.heat,
    )


def groove_depth(duty, thickness):
    """Depth of the groove for a ring of that thickness, cold [mm]. duty: a Duty. thickness [mm]."""
    return clearances.groove_depth(
        radial_thickness=thickness,
        piston_expansion=duty.piston.expansion,
        piston_temperature=duty.temperature,
        **duty.heat,
    )
