"""What `ht` tabulates of linings: refractories of the VDI Heat Atlas by temperature, ASHRAE's building stuff."""

from ht.insulation import ASHRAE, ASHRAE_k, Cp_material, refractories, refractory_VDI_Cp, refractory_VDI_k, rho_material

from _report import case, report

ZERO_C = 273.15
TEMPERATURES_C = (400, 600, 800, 1000, 1200)
VDI_WHY = "20 %, a judgement: one name covers bricks of many makers, and the atlas gives one curve"
ASHRAE_WHY = "20 %, a judgement: a middle value at room temperature of stuff that varies from maker to maker"
SHARE = 0.2
REFRACTORIES = (
    "Fireclay",
    "High-duty fireclay",
    "Silica",
    "Sillimanite",
    "Mullite",
    "Corundum 90%",
    "Magnesia",
    "Zircon",
    "SIC 70%",
    "SIC 90%",
    "L1260",
    "L1400",
)
WORDS = ("vermiculite", "perlite", "brick")
UNWANTED = ("blocks", "filled")


def property_case(name, material, celsius, value, why):
    inputs = {"material": material, "property": name}
    id = f"{material}: {name}"
    if celsius is not None:
        inputs["temperature_K"] = celsius + ZERO_C
        id = f"{id} at {celsius} °C"
    return case(id, inputs, float(value), float(value) * SHARE, why)


def vdi():
    for material in REFRACTORIES:
        yield property_case("density_kg_m3", material, None, refractories[material][0], VDI_WHY)
        for celsius in TEMPERATURES_C:
            kelvin = celsius + ZERO_C
            yield property_case("conductivity_W_mK", material, celsius, refractory_VDI_k(material, T=kelvin), VDI_WHY)
            yield property_case("heat_capacity_J_kgK", material, celsius, refractory_VDI_Cp(material, T=kelvin), VDI_WHY)


def ashrae():
    for material, row in ASHRAE.items():
        lower = material.lower()
        if not any(word in lower for word in WORDS) or any(word in lower for word in UNWANTED):
            continue
        density, heat_capacity = row[0], row[1]
        if row[2] is None:
            continue
        yield property_case("conductivity_W_mK", material, None, ASHRAE_k(material), ASHRAE_WHY)
        if density:
            yield property_case("density_kg_m3", material, None, rho_material(material), ASHRAE_WHY)
        if heat_capacity:
            yield property_case("heat_capacity_J_kgK", material, None, Cp_material(material), ASHRAE_WHY)


report(["ht", "fluids", "chemicals"], [*vdi(), *ashrae()])
