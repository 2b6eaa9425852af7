"""Burning by cantera: the same twelve species with graphite (adiabatic flames, composition), the full gas file of 748
species and GRI-Mech 3.0 for what the short list leaves out, heating values and enthalpies of single species.
"""

from math import exp

import cantera as ct
from CoolProp.CoolProp import PropsSI
from scipy.optimize import brentq

from _report import case, report

REFERENCE_K = 298.15
ATM = ct.one_atm
ASH = 1100  # J/(kg K), what ours takes too
SHORT = ["N2", "O2", "CO2", "H2O", "CO", "H2", "OH", "O", "H", "NO", "Ar"]
MAJOR = ["N2", "O2", "CO2", "H2O", "CO", "H2"]
AIR = {"O2": 0.2095, "N2": 0.7812, "Ar": 0.0093}


def read(file, **more):
    """Species of a data file, entropies taken at 1 bar: the file leaves the pressure out and would get 1 atm, but its
    entropies of N2, O2 and H2 are those that tables give for 1 bar."""
    known = ct.Species.list_from_file(file)
    return {s.name: ct.Species.from_dict({**s.input_data, **more, "thermo": at_1_bar(s)}) for s in known if s.name in WANTED}


def at_1_bar(species):
    return {**species.input_data["thermo"], "reference-pressure": 1e5}


SPECIES = [*SHORT, "CH4", "C3H8", "n-C4H10", "i-C4H10", "Zn", "C(gr)", "H2O(L)", "AL(cr)", "AL(L)", "Cu(cr)", "Cu(L)"]
SPECIES += ["Zn(cr)", "Zn(L)", "Fe(a)", "Fe(c)", "Fe(d)", "Fe(L)", "Si(cr)", "Si(L)"]
NAMES = {"n-C4H10": "C4H10,n-butane", "i-C4H10": "C4H10,isobutane"}
WANTED = {NAMES.get(name, name) for name in SPECIES}
gases = read("nasa_gas.yaml")
# Without a density a solid would be as light as 1 kg/m³, and pressure would lift its potential absurdly.
solids = read("nasa_condensed.yaml", **{"equation-of-state": {"model": "constant-volume", "density": 2200}})
WEIGHT = {"C": 12.011e-3, "H": 1.008e-3, "O": 15.999e-3, "N": 14.007e-3}

gas = ct.Solution(thermo="ideal-gas", species=[gases[n] for n in SHORT])
graphite = ct.Solution(thermo="fixed-stoichiometry", species=[solids["C(gr)"]])


def species(name):
    name = NAMES.get(name, name)
    return gases.get(name) or solids[name]


def h(name, T):
    """J/mol"""
    return species(name).thermo.h(T) / 1000


def blast(oxygen_share):
    rest = (1 - oxygen_share) / (AIR["N2"] + AIR["Ar"])
    return {"O2": oxygen_share, "N2": rest * AIR["N2"], "Ar": rest * AIR["Ar"]}


def atoms(fuel):
    """Moles of C, H, O, N and of water in 1 kg as fired, and its enthalpy at 25 °C, J/kg."""
    if "gases" in fuel:
        shares = fuel["gases"]
        mass = sum(x * species(n).molecular_weight / 1000 for n, x in shares.items())
        mol = {e: sum(x * species(n).composition.get(e, 0) for n, x in shares.items()) / mass for e in "CHON"}
        return mol, 0.0, sum(x * h(n, REFERENCE_K) for n, x in shares.items()) / mass
    burns = 1 - fuel["ash"] - fuel["moisture"]
    mol = {e: burns * fuel[e] / WEIGHT[e] for e in "CHON"}
    water = fuel["moisture"] / (2 * WEIGHT["H"] + WEIGHT["O"])
    burned = mol["C"] * h("CO2", REFERENCE_K) + (mol["H"] / 2 + water) * h("H2O", REFERENCE_K)
    return mol, water, burned + fuel["lower_heat_J_kg"]


def flame(fuel, phi, air_K, oxygen_share, pressure, full=None):
    """Temperature, the gas at it, moles of soot to a mole of gas, for 1 kg of fuel. `full`: another set of species."""
    mol, water, fuel_h = atoms(fuel)
    need = mol["C"] + mol["H"] / 4 - mol["O"] / 2
    air = {n: x * need / (phi * oxygen_share) for n, x in blast(oxygen_share).items()}
    oxygen = mol["O"] + water + 2 * air["O2"]
    target = fuel_h + sum(x * h(n, air_K) for n, x in air.items())
    # Any mixture of the same atoms will do as a start.
    carbon = min(mol["C"], oxygen)
    soot = mol["C"] - carbon
    start = {
        "N2": mol["N"] / 2 + air["N2"],
        "Ar": air["Ar"],
        "H2": mol["H"] / 2 + water,
        "CO": carbon,
        "O2": (oxygen - carbon) / 2,
    }
    mass = sum(x * gases[n].molecular_weight / 1000 for n, x in start.items())
    if full is not None:
        # The other file has heats of formation of its own: start from the same warmth above 25 °C.
        warmth = target - sum(x * h(n, REFERENCE_K) for n, x in start.items())
        full.TPX = REFERENCE_K, pressure, {n.upper() if n == "Ar" else n: x for n, x in start.items()}
        full.HP = full.h + warmth / mass, pressure
        full.equilibrate("HP", rtol=1e-10)
        return full.T, full, 0.0

    ash = fuel.get("ash", 0) * ASH
    if soot <= 0 and ash == 0:
        gas.TPX = REFERENCE_K, pressure, start
        gas.HP = target / mass, pressure
        gas.equilibrate("HP", rtol=1e-12, max_steps=5000)
        graphite.TP = gas.T, pressure
        carbon_potential = 2 * gas["CO"].chemical_potentials[0] - gas["CO2"].chemical_potentials[0]
        if carbon_potential <= graphite.chemical_potentials[0]:
            return gas.T, gas, 0.0

    def at(T):
        gas.TPX = T, pressure, start
        graphite.TP = T, pressure
        mix = ct.Mixture([(gas, sum(start.values()) / 1000), (graphite, soot / 1000)])
        mix.T, mix.P = T, pressure
        mix.equilibrate("TP", solver="vcs", rtol=1e-11, max_steps=20000)
        gas_mol, soot_mol = mix.phase_moles(0) * 1000, mix.phase_moles(1) * 1000
        held = gas_mol * gas.enthalpy_mole / 1000 + soot_mol * h("C(gr)", T) + ash * (T - REFERENCE_K)
        return held - target, soot_mol / gas_mol

    T = brentq(lambda T: at(T)[0], 500, 2800, xtol=1e-7)
    return T, gas, at(T)[1]


DRY = {"ash": 0.0, "moisture": 0.0}
FUELS = {
    "methane": {"gases": {"CH4": 1.0}},
    "propane": {"gases": {"C3H8": 1.0}},
    "butane": {"gases": {"n-C4H10": 0.7, "i-C4H10": 0.3}},
    "carbon": {"C": 1.0, "H": 0.0, "O": 0.0, "N": 0.0, "lower_heat_J_kg": 32.76e6, **DRY},
    "wood, dry": {"C": 0.505, "H": 0.061, "O": 0.43, "N": 0.004, "lower_heat_J_kg": 18.5e6, **DRY},
    "charcoal": {"C": 0.9, "H": 0.03, "O": 0.065, "N": 0.005, "lower_heat_J_kg": 32.0e6, **DRY},
    "damp, ashy charcoal": {
        "C": 0.9,
        "H": 0.03,
        "O": 0.065,
        "N": 0.005,
        "ash": 0.2,
        "moisture": 0.1,
        "lower_heat_J_kg": 22.5e6,
    },
    "damp wood": {
        "C": 0.505,
        "H": 0.061,
        "O": 0.43,
        "N": 0.004,
        "ash": 0.01,
        "moisture": 0.25,
        "lower_heat_J_kg": 13.4e6,
    },
    "oil": {"C": 0.86, "H": 0.14, "O": 0.0, "N": 0.0, "lower_heat_J_kg": 42.8e6, **DRY},
}
WHY_T = "0.1 K: the same data and the same species, two solvers"
WHY_X = "0.1 of a point of composition: the same data and the same species, two solvers"


def flames():
    for name, fuel in FUELS.items():
        grid = [(phi, 298.15, 0.2095, ATM) for phi in (0.4, 0.7, 0.9, 1.0, 1.05, 1.3, 1.8)]
        grid += [(0.9, 673.15, 0.2095, ATM), (1.05, 873.15, 0.2095, ATM), (0.95, 298.15, 0.3, ATM)]
        grid += [(1.1, 600.0, 0.4, ATM), (0.9, 298.15, 0.2095, 70_000)]
        if name in ("carbon", "charcoal", "damp, ashy charcoal"):
            grid += [(2.2, 298.15, 0.2095, ATM), (2.5, 600.0, 0.2095, ATM), (3.0, 298.15, 0.3, ATM)]
        for phi, air_K, oxygen, pressure in grid:
            inputs = {
                "kind": "flame",
                "fuel": fuel,
                "equivalence_ratio": phi,
                "air_K": air_K,
                "oxygen_share": oxygen,
                "pressure_Pa": pressure,
            }
            T, phase, soot = flame(fuel, phi, air_K, oxygen, pressure)
            T = round(T, 5)
            label = f"{name} φ {phi}, air {air_K:.0f} K, O2 {100 * oxygen:.4g} %, {pressure / 1000:.4g} kPa"
            yield case(f"{label}: temperature, K", inputs, T, 0.1, WHY_T)
            shares = {n: float(phase[n].X[0]) for n in MAJOR}
            shares["soot"] = soot
            shares = {n: round(x, 7) for n, x in shares.items()}
            yield case(f"{label}: mole shares", {**inputs, "kind": "composition"}, shares, 0.001, WHY_X)


def others():
    """What twelve species leave out: the whole of GRI-Mech 3.0, its own data."""
    gri = ct.Solution("gri30.yaml")
    for name in ("methane", "propane"):
        for phi in (0.7, 0.9, 1.0, 1.05, 1.2):
            T, _, _ = flame(FUELS[name], phi, 298.15, 0.2095, ATM, gri)
            inputs = {
                "kind": "full",
                "fuel": FUELS[name],
                "equivalence_ratio": phi,
                "air_K": 298.15,
                "oxygen_share": 0.2095,
                "pressure_Pa": ATM,
            }
            why = "1.2 K: 53 species and heat data of another fit; the short list leaves out what is below 0.01 %"
            yield case(f"{name} φ {phi}, GRI-Mech 3.0: temperature, K", inputs, round(T, 4), 1.2, why)


SHIFT = ct.Solution(thermo="ideal-gas", species=[gases[n] for n in ["CO", "CO2", "H2", "H2O", "N2", "Ar"]])


def flue(fuel, phi, freeze_K):
    """Moles for 1 kg of fuel, burned completely where air allows, else the shift alone at rest at `freeze_K`."""
    mol, water, fuel_h = atoms(fuel)
    need = mol["C"] + mol["H"] / 4 - mol["O"] / 2
    air = {n: x * need / (phi * AIR["O2"]) for n, x in AIR.items()}
    inert = {"N2": mol["N"] / 2 + air["N2"], "Ar": air["Ar"]}
    hydrogen = mol["H"] / 2 + water
    oxygen = mol["O"] + water + 2 * air["O2"]
    if phi <= 1:
        spare = (oxygen - 2 * mol["C"] - hydrogen) / 2
        return {"CO2": mol["C"], "H2O": hydrogen, "O2": spare, "CO": 0, "H2": 0, **inert}, air, fuel_h
    # The oxygen left after CO first as water, then as CO2: any split with the right atoms.
    steam = min(hydrogen, oxygen - mol["C"])
    dioxide = oxygen - mol["C"] - steam
    start = {"CO": mol["C"] - dioxide, "CO2": dioxide, "H2O": steam, "H2": hydrogen - steam, **inert}
    SHIFT.TPX = freeze_K, ATM, start
    SHIFT.equilibrate("TP", rtol=1e-12)
    total = sum(start.values())
    return {"O2": 0, **{n: float(SHIFT[n].X[0]) * total for n in SHIFT.species_names}}, air, fuel_h


def flues():
    why_x = "1e-6: the same balance solved another way"
    for name, phi, freeze_K in [
        ("propane", 1.05, 1500.0),
        ("propane", 1.2, 1500.0),
        ("methane", 1.3, 1300.0),
        ("charcoal", 1.5, 1500.0),
        ("damp wood", 1.4, 1500.0),
        ("carbon", 1.4, 1500.0),
        ("oil", 1.2, 1000.0),
    ]:
        moles, _, _ = flue(FUELS[name], phi, freeze_K)
        inputs = {"kind": "flue", "fuel": FUELS[name], "equivalence_ratio": phi, "freeze_K": freeze_K}
        total = sum(moles.values())
        shares = {n: round(x / total, 9) for n, x in moles.items()}
        yield case(f"{name} φ {phi}, shift stopped at {freeze_K:.0f} K: mole shares", inputs, shares, 1e-6, why_x)

    why = "1e-6 of the heating value: the same enthalpies, summed separately"
    for name, phi, air_C, flue_C in [
        ("propane", 1 / 1.15, 25, 1100),
        ("propane", 1.0, 25, 1000),
        ("propane", 1 / 1.5, 25, 1000),
        ("propane", 0.5, 25, 1000),
        ("propane", 1.1, 25, 1000),
        ("propane", 1 / 1.15, 400, 1100),
        ("methane", 1 / 1.05, 25, 800),
        ("charcoal", 1 / 1.3, 25, 1100),
        ("charcoal", 1.5, 25, 900),
        ("damp, ashy charcoal", 1 / 1.3, 25, 1100),
        ("damp wood", 1 / 1.3, 25, 800),
        ("oil", 1 / 1.2, 100, 1200),
    ]:
        fuel = FUELS[name]
        moles, air, fuel_h = flue(fuel, phi, 1500.0)
        T = flue_C + 273.15
        went_in = fuel_h + sum(x * h(n, air_C + 273.15) for n, x in air.items())
        leaves = sum(x * h(n, T) for n, x in moles.items()) + fuel.get("ash", 0) * ASH * (T - REFERENCE_K)
        mol, water, _ = atoms(fuel)
        burned = mol["C"] * h("CO2", REFERENCE_K) + (mol["H"] / 2 + water) * h("H2O", REFERENCE_K)
        inputs = {
            "kind": "available",
            "fuel": fuel,
            "equivalence_ratio": phi,
            "air_K": air_C + 273.15,
            "flue_K": T,
        }
        label = f"{name} φ {phi:.4g}, air {air_C} °C, flue {flue_C} °C: heat left, share of lower"
        yield case(label, inputs, (went_in - leaves) / (fuel_h - burned), 1e-6, why)


def warm_air():
    """Methane, 10 % excess air: heat left of the higher value, and what warm air saves of the fuel."""
    fuel = FUELS["methane"]
    phi = 1 / 1.1
    moles, air, fuel_h = flue(fuel, phi, 1500.0)
    higher = fuel_h - sum(x * h(n, REFERENCE_K) for n, x in moles.items() if n in ("CO2", "H2O"))
    higher += moles["H2O"] * (h("H2O", REFERENCE_K) - h("H2O(L)", REFERENCE_K))

    def left(flue_K, air_K):
        return fuel_h + sum(x * h(n, air_K) for n, x in air.items()) - sum(x * h(n, flue_K) for n, x in moles.items())

    why = "1e-6 of the heating value: the same enthalpies, summed separately"
    for flue_F in (1000, 1600, 2000, 2400):
        T = (flue_F - 32) / 1.8 + 273.15
        inputs = {"kind": "chart", "fuel": fuel, "equivalence_ratio": phi, "flue_K": T}
        label = f"methane, 10 % excess air, flue {flue_F} °F: heat left, share of higher"
        yield case(label, inputs, left(T, REFERENCE_K) / higher, 1e-6, why)
        for air_F in (400, 800):
            warm_K = (air_F - 32) / 1.8 + 273.15
            inputs = {"kind": "saving", "fuel": fuel, "equivalence_ratio": phi, "flue_K": T, "warm_K": warm_K}
            label = f"methane, 10 % excess air, flue {flue_F} °F, air {air_F} °F: share of fuel saved"
            yield case(label, inputs, 1 - left(T, REFERENCE_K) / left(T, warm_K), 1e-5, why)


def boudouard():
    """C + CO2 = 2 CO from its constant alone: x²/(1 − x) = K, x the share of CO, 1 bar of nothing else."""
    why = "1e-6: the constant of one reaction against the whole equilibrium; free radicals below 1e-8"
    for celsius in (500, 600, 700, 800, 900, 1000):
        T = celsius + 273.15
        g = {n: species(n).thermo.h(T) - T * species(n).thermo.s(T) for n in ("CO", "CO2", "C(gr)")}
        K = exp((g["C(gr)"] + g["CO2"] - 2 * g["CO"]) / (ct.gas_constant * T))
        x = brentq(lambda x: x * x - K * (1 - x), 0, 1, xtol=1e-14)
        yield case(f"CO over carbon at {celsius} °C, 1 bar: share", {"kind": "boudouard", "T_K": T}, x, 1e-6, why)


def heats():
    for name in ("methane", "propane", "butane"):
        fuel = FUELS[name]
        mol, _, fuel_h = atoms(fuel)
        burned = mol["C"] * h("CO2", REFERENCE_K) + mol["H"] / 2 * h("H2O", REFERENCE_K)
        condensed = mol["H"] / 2 * (h("H2O", REFERENCE_K) - h("H2O(L)", REFERENCE_K))
        lower = fuel_h - burned
        why = "the same formation enthalpies: rounding of molar masses only"
        yield case(f"{name}: lower heat, J/kg", {"kind": "lower", "fuel": fuel}, lower, 1e-6 * lower, why)
        yield case(f"{name}: higher heat, J/kg", {"kind": "higher", "fuel": fuel}, lower + condensed, 1e-6 * lower, why)


def properties():
    why = "one polynomial evaluated twice: rounding only (share of the value, or of R or RT where that is larger)"
    names = [*SHORT, "CH4", "C3H8", "n-C4H10", "i-C4H10", "Zn"]
    wanted = [(n, T) for n in names for T in (250.0, 298.15, 999.0, 1500.0, 3000.0)]
    wanted += [("C(gr)", 298.15), ("C(gr)", 1400.0), ("H2O(L)", 298.15), ("H2O(L)", 370.0)]
    wanted += [("AL(cr)", 900.0), ("AL(L)", 1000.0), ("Cu(cr)", 1300.0), ("Cu(L)", 1473.15), ("Zn(cr)", 650.0)]
    wanted += [("Zn(L)", 753.15), ("Fe(a)", 900.0), ("Fe(a)", 1020.0), ("Fe(a)", 1100.0), ("Fe(c)", 1400.0)]
    wanted += [("Fe(d)", 1700.0), ("Fe(L)", 1823.15), ("Si(cr)", 1500.0), ("Si(L)", 1773.15)]
    for name, T in wanted:
        thermo = species(name).thermo
        values = {"cp": thermo.cp(T) / 1000, "h": thermo.h(T) / 1000, "s": thermo.s(T) / 1000}
        inputs = {"kind": "property", "species": name, "T_K": T}
        yield case(f"{name} at {T:.6g} K: cp, h, s", inputs, values, 1e-9, why)


def saturation():
    why = "1 %: an ideal vapour over a liquid at 1 atm, against the equation of state"
    for celsius in (1, 10, 20, 30, 40, 60):
        T = celsius + 273.15
        expected = PropsSI("P", "T", T, "Q", 1, "Water")
        yield case(f"water: saturation pressure at {celsius} °C, Pa", {"kind": "saturation", "T_K": T}, expected, 0.01 * expected, why)


report(["cantera", "CoolProp", "scipy"], [*flames(), *others(), *flues(), *warm_air(), *boudouard(), *heats(), *properties(), *saturation()])
