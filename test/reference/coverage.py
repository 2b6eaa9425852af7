"""Tabulated properties of building stuff, metals and light bricks that the catalogue has too, as `ht` carries them.

Every row of three tables whose material and density are those of a catalogue entry: nothing was left out for its value.
`tolerance` is half of the last digit that the table prints.
"""

from ht.insulation import ASHRAE, building_materials, refractories, refractory_VDI_Cp, refractory_VDI_k

from _report import case, report

ZERO_C = 273.15
LAST_DIGIT = "half of the last digit printed"
#: Row of ASHRAE Fundamentals 2013: catalogue entry. Conductivity near 24 °C, heat capacity near room temperature.
ASHRAE_ROWS = {
    **{f"Brick, fired clay, {density} kg/m^3": "common-red-brick" for density in (1440, 1600, 1760, 1920, 2080)},
    **{f"Loose fill, Perlite, expanded, {density} kg/m^3": "perlite" for density in (50, 100, 150)},
    **{f"Loose fill, Vermiculite, exfoliated, {density} kg/m^3": "vermiculite" for density in (80, 120)},
    **{
        f"Concrete, Perlite, vermiculite, and polystyrene beads, {density} kg/m^3": "perlite-cement-backup"
        for density in (320, 480, 640)
    },
    **{f"Vermiculite aggregate, {density} kg/m^3": "vermiculite-cement" for density in (480, 600, 720)},
    "Mineral wool, felted, 100 kg/m^3": "mineral-wool",
    "Slag wool, 120 kg/m^3": "mineral-wool",
    "Concrete, Sand and gravel or stone aggregate concretes, 2240 kg/m^3": "ordinary-concrete",
    "Concrete, Sand and gravel or stone aggregate concretes, 2400 kg/m^3": "ordinary-concrete",
    "Sand/gypsum (3:1) plaster, conditioned": "plaster-sand-lining",
    "Oak": "wood",
    "Pine (oven-dried)": "wood",
}
#: Row of EN 12524: catalogue entry. Its densities are multiples of 100, its heat capacities of 10.
EN_ROWS = {
    "Metals, steel": "mild-steel",
    "Metals, stainless steel": "stainless-steel",
    "Metals, aluminium alloys": "aluminium",
    "Metals, brass": "brass",
    "Metals, bronze": "bronze",
    "Metals, copper": "copper",
    "Metals, iron, cast": "grey-iron",
    "Metals, lead": "lead",
    "Metals, zinc": "zinc",
    "Concrete, medium density 2200 kg/m^3": "ordinary-concrete",
    "Concrete, high density": "ordinary-concrete",
    "Timber, 500 kg/m^3": "wood",
}
WITHOUT_CONDUCTIVITY = ("aluminium", "brass", "bronze", "copper", "grey-iron", "lead", "zinc", "wood")
#: Brick of the VDI Heat Atlas: catalogue entry. Its heat capacities behave as means from 20 °C.
VDI_ROWS = {
    "L1260": "insulating-brick-23",
    "L1400": "insulating-brick-26",
    "L1540": "insulating-brick-28",
    "Fireclay": "fireclay-brick",
    "High-duty fireclay": "high-duty-fireclay-brick",
    "Silica": "silica-brick",
}
#: Of a curve, both ends and the middle of what the catalogue's curves share with it.
VDI_C = (400, 800, 1000)


def row(table, name, entry, property, value, half_digit, celsius=None):
    inputs = {"table": table, "row": name, "entry": entry, "property": property}
    if celsius is not None:
        inputs["temperature_K"] = celsius + ZERO_C
    at = "" if celsius is None else f" at {celsius} °C"
    return case(f"{table}, {name}: {property}{at}", inputs, float(value), half_digit, LAST_DIGIT)


def half_of_last(value):
    """0.78 → 0.005; 0.405 → 0.0005; 0.2 is printed 0.20."""
    digits = max(2, len(repr(float(value)).split(".")[1]))
    return 0.5 * 10**-digits


def ashrae():
    seen = set()
    for name, entry in ASHRAE_ROWS.items():
        _, heat_capacity, conductivity = ASHRAE[name][:3]
        if conductivity is not None and entry != "wood":
            yield row("ASHRAE", name, entry, "conductivity_W_mK", conductivity, half_of_last(conductivity), 24)
        # One heat capacity is printed beside all bricks: it is one value.
        if heat_capacity is not None and (entry, heat_capacity) not in seen:
            seen.add((entry, heat_capacity))
            yield row("ASHRAE", name, entry, "heat_capacity_J_kgK", heat_capacity, 5, 24)


def en():
    for name, entry in EN_ROWS.items():
        density, conductivity, heat_capacity = building_materials[name]
        if entry not in ("ordinary-concrete", "wood"):
            yield row("EN 12524", name, entry, "density_kg_m3", density, 50)
        if entry not in WITHOUT_CONDUCTIVITY:
            yield row("EN 12524", name, entry, "conductivity_W_mK", conductivity, 0.5 if conductivity >= 10 else 0.025, 20)
            yield row("EN 12524", name, entry, "heat_capacity_J_kgK", heat_capacity, 5, 20)
        elif entry == "wood":
            yield row("EN 12524", name, entry, "heat_capacity_J_kgK", heat_capacity, 5, 20)


def vdi():
    for name, entry in VDI_ROWS.items():
        yield row("VDI", name, entry, "density_kg_m3", refractories[name][0], 5)
        for celsius in VDI_C:
            T = celsius + ZERO_C
            yield row("VDI", name, entry, "conductivity_W_mK", refractory_VDI_k(name, T=T), 0.005, celsius)
            yield row("VDI", name, entry, "mean heat capacity_J_kgK", refractory_VDI_Cp(name, T=T), 0.5, celsius)


report(["ht"], [*ashrae(), *en(), *vdi()])
