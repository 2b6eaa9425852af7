"""Water and air by CoolProp's equations of state: what drying a lining and losing heat to air cost."""

import CoolProp.CoolProp as CP

from _report import case, report

ZERO_C = 273.15
NORMAL_PA = 101_325
SHARE = 0.02
WHY = "2 %: a table rounded to three figures and read between its rows is no closer"


def water():
    boiling_K = CP.PropsSI("T", "P", NORMAL_PA, "Q", 0, "Water")
    liquid = CP.PropsSI("H", "P", NORMAL_PA, "Q", 0, "Water")
    vapour = CP.PropsSI("H", "P", NORMAL_PA, "Q", 1, "Water")
    yield case(
        "water: boiling point, K",
        {"pressure_Pa": NORMAL_PA},
        boiling_K,
        0.05,
        "0.05 K: 100 °C by the old definition is 99.974 °C by the equation of state",
    )
    yield one("water: heat to evaporate, J/kg", {"pressure_Pa": NORMAL_PA}, vapour - liquid)
    for celsius in (5, 20):
        cold = CP.PropsSI("H", "T", celsius + ZERO_C, "P", NORMAL_PA, "Water")
        inputs = {"start_K": celsius + ZERO_C, "pressure_Pa": NORMAL_PA}
        yield one(f"water: heat from {celsius} °C to steam at the boil, J/kg", inputs, vapour - cold)
    for celsius in (100, 120, 150, 200):
        pressure = CP.PropsSI("P", "T", celsius + ZERO_C, "Q", 1, "Water")
        yield one(f"water: steam pressure at {celsius} °C, Pa", {"temperature_K": celsius + ZERO_C}, pressure)
    density = CP.PropsSI("D", "T", 20 + ZERO_C, "P", NORMAL_PA, "Water")
    yield one("water: density at 20 °C, kg/m³", {"temperature_K": 20 + ZERO_C, "pressure_Pa": NORMAL_PA}, density)


def air():
    names = {
        "conductivity_W_mK": "L",
        "viscosity_Pa_s": "V",
        "density_kg_m3": "D",
        "heat_capacity_J_kgK": "C",
    }
    for celsius in (20, 60, 100, 200, 400):
        inputs = {"temperature_K": celsius + ZERO_C, "pressure_Pa": NORMAL_PA}
        for name, symbol in names.items():
            value = CP.PropsSI(symbol, "T", inputs["temperature_K"], "P", NORMAL_PA, "Air")
            yield one(f"air: {name} at {celsius} °C", inputs, value)


def one(id, inputs, expected):
    return case(id, inputs, expected, SHARE * expected, WHY)


report(["CoolProp"], [*water(), *air()])
