"""Times cantera's adiabatic equilibrium with the same eleven gases. Reads one JSON list of mixtures (moles of C, H, O, N,
Ar, enthalpy in J) on stdin, prints the median seconds a solve from complete combustion, from a better guess and with
graphite beside the gases as ours has it, and the temperatures.
"""

import json
import statistics
import sys
import time

import cantera as ct

NAMES = ["N2", "O2", "CO2", "H2O", "CO", "H2", "OH", "O", "H", "NO", "Ar"]
PASSES = 7
# One atmosphere over the 1 bar that the entropies are of: the file takes them for those at 1 atm, and equilibrium knows
# only the ratio.
PRESSURE = ct.one_atm * ct.one_atm / 1e5

known = {s.name: s for s in ct.Species.list_from_file("nasa_gas.yaml")}
gas = ct.Solution(thermo="ideal-gas", species=[known[name] for name in NAMES])


def start(atoms):
    """Complete combustion, where ours starts too; short of air, the oxygen shared between CO and H2 alike."""
    C, H, O, N, Ar = atoms
    burned = min(1, (O - C) / (C + H / 2))
    moles = {"CO2": C * burned, "CO": C * (1 - burned), "H2O": H / 2 * burned, "H2": H / 2 * (1 - burned)}
    return {**moles, "O2": max(0, (O - C - burned * (C + H / 2)) / 2), "N2": N / 2, "Ar": Ar}


def timed(mixtures):
    """Median seconds a solve, and the temperatures, from each mixture's own start."""
    seconds, temperatures = [], []
    for _ in range(PASSES):
        temperatures = []
        begun = time.perf_counter()
        for h, T, X in mixtures:
            gas.TPX = T, PRESSURE, X
            gas.HP = h, PRESSURE
            gas.equilibrate("HP")
            temperatures.append(gas.T)
        seconds.append((time.perf_counter() - begun) / len(mixtures))
    return statistics.median(seconds), temperatures


def timed_with_graphite(mixtures):
    """The same twelve species as ours: two phases, so another of cantera's solvers."""
    graphite = ct.Solution("graphite.yaml")
    both = ct.Mixture([(gas, 1), (graphite, 0)])
    seconds = []
    for h, T, X in mixtures:
        gas.TPX = T, PRESSURE, X
        # The temperature at which these gases, as they are, hold the heat.
        gas.HP = h, PRESSURE
        both.set_phase_moles(0, 1)
        both.set_phase_moles(1, 0)
        both.species_moles = [*gas.X, 0]
        both.T, both.P = gas.T, PRESSURE
        begun = time.perf_counter()
        both.equilibrate("HP")
        seconds.append(time.perf_counter() - begun)
    return statistics.median(seconds)


plain, guessed = [], []
for one in json.load(sys.stdin):
    moles = start(one["elements_mol"])
    mass = sum(n * known[name].molecular_weight / 1000 for name, n in moles.items())
    gas.TPX = 298.15, PRESSURE, moles
    plain.append((one["enthalpy_J"] / mass, 298.15, gas.X.copy()))
    # At equilibrium at 2000 K already: the best guess that someone could hand over.
    gas.TPX = 2000, PRESSURE, moles
    gas.equilibrate("TP")
    guessed.append((one["enthalpy_J"] / mass, 2000, gas.X.copy()))

seconds, temperatures = timed(plain)
from_guess, _ = timed(guessed)
print(json.dumps({"seconds": seconds, "seconds_from_guess": from_guess, "seconds_with_graphite": timed_with_graphite(plain), "temperatures_K": temperatures}))
