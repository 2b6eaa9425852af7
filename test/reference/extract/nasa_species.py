"""Prints core/fire/data/nasa-species.json: the thermodynamic polynomials the project uses, taken from the data
files that cantera ships (`nasa_gas.yaml`, `nasa_condensed.yaml`; origin McBride, Gordon, Reno, NASA TM-4513, 1993).

    .venv/bin/python extract/nasa_species.py > ../../core/fire/data/nasa-species.json
"""

import json
from importlib.metadata import version

import cantera as ct

GAS = "N2 O2 CO2 H2O CO H2 OH O H NO Ar CH4 C3H8 C4H10,n-butane C4H10,isobutane Zn".split()
CONDENSED = "C(gr) H2O(L) AL(cr) AL(L) Cu(cr) Cu(L) Zn(cr) Zn(L) Fe(a) Fe(c) Fe(d) Fe(L) Si(cr) Si(L)".split()
# The report's entropies are at 1 bar (N2 191.609 J/(mol K), as tables give it); the files leave the pressure out.
PRESSURE_Pa = 100000
RENAMED = {"C4H10,n-butane": "n-C4H10", "C4H10,isobutane": "i-C4H10"}


def pieces(thermo):
    """Ranges with seven coefficients each, coldest first; a second range without width is left out."""
    data = thermo["temperature-ranges"], thermo["data"]
    if thermo["model"] == "NASA9":
        # Written with nine coefficients, but of the same polynomial: those of 1/T² and 1/T are zero.
        assert all(row[0] == row[1] == 0 for row in data[1])
        data = data[0], [row[2:] for row in data[1]]
    ranges, rows = data
    cut = list(zip(ranges, ranges[1:], rows))
    return [{"from_K": low, "to_K": high, "a": row} for low, high, row in cut if high > low]


def entry(species, phase):
    kept = pieces(species.input_data["thermo"])
    for piece in kept:
        assert len(piece["a"]) == 7
    return {
        "name": RENAMED.get(species.name, species.name),
        "phase": phase,
        "molar_mass_kg_mol": float(f"{species.molecular_weight / 1000:.12g}"),
        "composition": {k.capitalize(): int(v) for k, v in species.composition.items()},
        "pieces": kept,
        "note": species.input_data["thermo"].get("note", ""),
    }


def chosen(file, names, phase):
    known = {species.name: species for species in ct.Species.list_from_file(file)}
    return [entry(known[name], phase) for name in names]


species = chosen("nasa_gas.yaml", GAS, "gas") + chosen("nasa_condensed.yaml", CONDENSED, "condensed")
head = {"source": "nasa-tm-4513", "extractedWith": {"cantera": version("cantera")}, "pressure_Pa": PRESSURE_Pa}
# A species a line, so that a changed coefficient is a changed line.
lines = ",\n".join(json.dumps(each, ensure_ascii=False, allow_nan=False) for each in species)
print(json.dumps(head)[:-1] + ', "species": [\n' + lines + "\n]}")
