"""Heat of metals by another program's data, melting by handbook tables, and the time to melt by a solver of ODEs."""

import cantera as ct
import numpy as np
from chemicals import CAS_from_any
from chemicals.elements import periodic_table
from chemicals.phase_change import Hfus, Tm
from scipy.integrate import solve_ivp

from _report import case, report

CONDENSED = {s.name: s for s in ct.Species.list_from_file("nasa_condensed.yaml")}
SOLIDS = {
    "Al": ["AL(cr)"],
    "Cu": ["Cu(cr)"],
    "Zn": ["Zn(cr)"],
    "Fe": ["Fe(a)", "Fe(c)", "Fe(d)"],
    "Si": ["Si(cr)"],
    "Mg": ["Mg(cr)"],
    "Pb": ["Pb(cr)"],
}
ELEMENTS = ("Al", "Cu", "Zn", "Fe", "Si", "Sn", "Pb", "Mg", "Mn")
LIQUIDS = {name: f"{solids[0].split('(')[0]}(L)" for name, solids in SOLIDS.items()}
ZERO = 273.15
COLD = ZERO + 20
SAME = "the same polynomials, read by another program; molar masses may differ in the fifth digit"
CRC = "tables of one property differ by at most 1.5 %, tin by 1.8 %, zinc by 3.5 %"
APART = {"Zn": 0.035, "Sn": 0.018}


def molar_heat(name, T):
    """J/mol; the last heat capacity is carried on past the ends."""
    thermo = CONDENSED[name].thermo
    known = min(max(T, thermo.min_temp), thermo.max_temp)
    return (thermo.h(known) + (T - known) * thermo.cp(known)) / 1000


def per_kg(element):
    return 1000 / periodic_table[element].MW


def solid(element, T):
    names = SOLIDS[element]
    name = next((n for n in names if T <= CONDENSED[n].thermo.max_temp), names[-1])
    return (molar_heat(name, T) - molar_heat(names[0], 298.15)) * per_kg(element)


def liquid(element, T):
    return (molar_heat(LIQUIDS[element], T) - molar_heat(SOLIDS[element][0], 298.15)) * per_kg(element)


def pure(element, celsius, share=2e-4, why=SAME):
    heat = liquid(element, ZERO + celsius) - solid(element, COLD)
    inputs = {"kind": "pure", "element": element, "to_K": ZERO + celsius}
    return case(f"{element} to {celsius} °C", inputs, heat, heat * share, why)


def warm(element, celsius, share=2e-4, why=SAME):
    heat = solid(element, ZERO + celsius) - solid(element, COLD)
    inputs = {"kind": "solid", "element": element, "to_K": ZERO + celsius}
    return case(f"{element}, solid to {celsius} °C", inputs, heat, heat * share, why)


def kopp(name, shares, celsius):
    T = ZERO + celsius
    heat = sum(share * (liquid(e, T) - solid(e, COLD)) for e, share in shares.items())
    inputs = {"kind": "sum", "shares": shares, "to_K": T}
    return case(f"{name} to {celsius} °C, sum of the elements", inputs, heat, heat * 3e-4, SAME)


def fusion(element, share):
    cas = CAS_from_any(element)
    heat = Hfus(cas, method="CRC") * per_kg(element)
    return case(f"fusion of {element}", {"kind": "fusion", "element": element}, heat, heat * share, CRC)


def melting(element, within):
    T = Tm(CAS_from_any(element), method="CRC_INORG")
    why = "NASA rounds iron and silicon to older fixed points, to 4 K" if within > 1 else "one fixed point, rounded"
    return case(f"{element} melts", {"kind": "melting", "element": element}, T, within, why)


def lump(id, inputs, tolerance=2e-4):
    """dH/dt = h A (fire − T(H)) from cold to the pour, T read off the same curve between its points."""
    T = np.array([p["T_K"] for p in inputs["curve"]])
    H = inputs["mass_kg"] * np.array([p["heat_J_kg"] for p in inputs["curve"]]) + inputs["pot_J_K"] * (T - T[0])
    conductance = inputs["film_W_m2K"] * inputs["area_m2"]

    def rate(_, heat):
        return conductance * (inputs["fire_K"] - np.interp(heat, H, T))

    def poured(_, heat):
        return heat[0] - H[-1]

    poured.terminal = True
    slowest = H[-1] / (conductance * (inputs["fire_K"] - T[-1]))
    answer = solve_ivp(rate, (0, 2 * slowest), [0.0], events=poured, rtol=1e-9, atol=1e-3, max_step=slowest / 400)
    time = float(answer.t_events[0][0])
    why = "a solver of ordinary differential equations stepping over the kinks of the curve"
    return case(id, {"kind": "lump", **inputs}, time, time * tolerance, why)


def points(*pairs):
    return [{"T_K": T, "heat_J_kg": heat} for T, heat in pairs]


def fine(element, celsius, mass, pot, area, film, fire):
    """Pot and pure metal heated along cantera's own heats in 0.05 K steps: our curve has a dozen straight stretches."""
    melts = CONDENSED[LIQUIDS[element]].thermo.min_temp
    conductance = film * area
    time = 0.0
    for heat, low, high in ((solid, COLD, melts), (liquid, melts, ZERO + celsius)):
        T = np.linspace(low, high, int((high - low) / 0.05))
        H = np.array([heat(element, x) for x in T]) * mass + pot * T
        middle = (T[1:] + T[:-1]) / 2
        time += float(np.sum(np.diff(H) / (conductance * (fire - middle))))
    time += mass * (liquid(element, melts) - solid(element, melts)) / (conductance * (fire - melts))
    inputs = {
        "kind": "fine",
        "element": element,
        "from_K": COLD,
        "pour_K": ZERO + celsius,
        "mass_kg": mass,
        "pot_J_K": pot,
        "area_m2": area,
        "film_W_m2K": film,
        "fire_K": fire,
    }
    why = "twelve straight stretches for the solid's curve, and a melting point rounded differently"
    return case(f"{mass} kg {element} to {celsius} °C in a pot", inputs, time, time * 0.004, why)


def steel_pot():
    """Mean heat capacity of iron to 700 °C, for the pot of steel."""
    value = (solid("Fe", ZERO + 700) - solid("Fe", COLD)) / 680
    why = "steel is not pure iron, and pots differ"
    return case("iron, mean heat capacity 20 to 700 °C", {"kind": "steel"}, value, 30, why)


LEAD = "heat capacities from memory against NASA's: 2 %, and 1.5 % between tables of fusion"

report(
    ["cantera", "chemicals", "scipy", "numpy"],
    [
        pure("Al", 700),
        pure("Al", 760),
        pure("Al", 800),
        pure("Cu", 1200),
        pure("Zn", 480),
        pure("Fe", 1550),
        pure("Si", 1500),
        pure("Pb", 400, 0.03, LEAD),
        pure("Mg", 700, 0.02, LEAD),
        warm("Al", 580),
        warm("Fe", 1000),
        warm("Fe", 1450),
        warm("Cu", 900),
        warm("Pb", 300, 0.02, LEAD),
        warm("Mg", 600, 0.02, LEAD),
        kopp("Cu-30Zn", {"Cu": 0.7, "Zn": 0.3}, 1060),
        kopp("Zn-4Al", {"Zn": 0.96, "Al": 0.04}, 430),
        kopp("Al-7Si", {"Al": 0.93, "Si": 0.07}, 740),
        *[fusion(e, APART.get(e, 0.015)) for e in ELEMENTS],
        *[melting(e, 4 if e in ("Fe", "Si") else 0.3) for e in ELEMENTS],
        lump(
            "a lump that does not melt",
            {
                "curve": points((293.15, 0), (900, 600e3)),
                "mass_kg": 4.0,
                "pot_J_K": 2500.0,
                "area_m2": 0.1,
                "film_W_m2K": 180.0,
                "fire_K": 1300.0,
            },
        ),
        lump(
            "solid, a melting range, liquid",
            {
                "curve": points((293.15, 0), (830, 540e3), (888, 1000e3), (973, 1090e3)),
                "mass_kg": 5.0,
                "pot_J_K": 3300.0,
                "area_m2": 0.13,
                "film_W_m2K": 120.0,
                "fire_K": 1323.0,
            },
        ),
        lump(
            "a pour close below the fire",
            {
                "curve": points((293.15, 0), (1357, 440e3), (1358, 645e3), (1500, 720e3)),
                "mass_kg": 8.0,
                "pot_J_K": 2000.0,
                "area_m2": 0.07,
                "film_W_m2K": 250.0,
                "fire_K": 1540.0,
            },
        ),
        fine("Al", 720, 5.0, 3300.0, 0.13, 180.0, 1323.0),
        fine("Cu", 1180, 6.0, 1600.0, 0.08, 180.0, 1800.0),
        steel_pot(),
    ],
)
