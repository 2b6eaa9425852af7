"""Odds, differences and the order of inputs by plain random sampling and by Sobol indices, for two sides that share doubt."""

import numpy as np
from SALib.analyze import sobol
from SALib.sample import sobol as sobol_sample
from scipy.stats import triang

from _report import case, report

SAMPLES = 100_000
SEED = 20_261_125
SOBOL_BASE = 1024
SIGMA = 5.670374419e-8


def tri(low, typical, high):
    return {"low": low, "typical": typical, "high": high}


def at_share(spread, share):
    low, typical, high = spread["low"], spread["typical"], spread["high"]
    return triang.ppf(share, (typical - low) / (high - low), low, high - low)


def shell_K(x, conductivity, thickness_m):
    """A plane wall between a hot face and an outside that loses by one coefficient, held for long."""
    resistance = thickness_m / conductivity + 1 / x["film_W_m2K"]
    return x["air_K"] + (x["face_K"] - x["air_K"]) / resistance / x["film_W_m2K"]


POUND_kg = 0.45359237


def clay_and_sand(x):
    """30 L of one part of clay and two of sand by loose volume, bought in whole bags of 50 lb: (dry mass in kg, dollars)."""
    dry_kg = 0.03 * x["packs_clay_sand_kg_m3"] * (1 + x["spare"])
    clay, sand = x["loose_clay_kg_m3"], 2 * x["loose_sand_kg_m3"]
    bags = [np.ceil(dry_kg * part / (clay + sand) / (50 * POUND_kg)) for part in (clay, sand)]
    return dry_kg, bags[0] * x["bag_of_clay_USD"] + bags[1] * x["bag_of_sand_USD"]


def castable(x):
    """The same 30 L of castable, in whole bags of 25 kg."""
    dry_kg = 0.03 * x["packs_castable_kg_m3"] * (1 + x["spare"])
    return dry_kg, np.ceil(dry_kg / 25) * x["bag_of_castable_USD"]


MIX = {
    "packs_clay_sand_kg_m3": tri(1700, 1850, 2000),
    "spare": tri(0.05, 0.1, 0.2),
    "loose_clay_kg_m3": tri(600, 1000, 1150),
    "loose_sand_kg_m3": tri(1450, 1600, 1720),
    "bag_of_clay_USD": tri(8, 9, 15),
    "bag_of_sand_USD": tri(4, 5, 9),
    "packs_castable_kg_m3": tri(1950, 2150, 2350),
    "bag_of_castable_USD": tri(35, 50, 80),
}

#: Every model is the difference of two sides, one less the other; inputs of one name are shared.
MODELS = {
    "two lines with a shared doubt": (
        {"shared": tri(0, 10, 40), "own_a": tri(0, 1, 3), "own_b": tri(0.5, 1.5, 3)},
        lambda x: (x["shared"] + x["own_a"], x["shared"] + x["own_b"]),
    ),
    "a product against a sum": (
        {"a": tri(1, 2, 3), "b": tri(2, 2.5, 4), "c": tri(1, 3, 8)},
        lambda x: (x["a"] * x["b"], x["c"] + x["a"]),
    ),
    "shell behind 50 mm of two fills, K": (
        {
            "face_K": tri(1223, 1273, 1323),
            "air_K": tri(285, 293, 301),
            "film_W_m2K": tri(9, 12, 18),
            "first_W_mK": tri(0.10, 0.14, 0.20),
            "second_W_mK": tri(0.13, 0.17, 0.22),
        },
        lambda x: (shell_K(x, x["first_W_mK"], 0.05), shell_K(x, x["second_W_mK"], 0.05)),
    ),
    "30 L of clay and sand against castable, kg": (MIX, lambda x: (clay_and_sand(x)[0], castable(x)[0])),
    "30 L of clay and sand against castable, $": (MIX, lambda x: (clay_and_sand(x)[1], castable(x)[1])),
}


def weighed():
    for id, (spreads, sides) in MODELS.items():
        random = np.random.default_rng(SEED)
        drawn = {name: at_share(spread, random.random(SAMPLES)) for name, spread in spreads.items()}
        one, other = sides(drawn)
        difference = one - other
        low, high = (float(point) for point in np.quantile(difference, [0.025, 0.975]))
        inputs = {"model": id, "spreads": spreads}
        yield case(
            f"{id}: odds that the first is below",
            {**inputs, "what": "odds"},
            float(np.mean(one < other)),
            0.02,
            "two in a hundred: 1,000 Halton points against 100,000 random ones, good to a sixth of a point themselves",
        )
        for end, value in (("low", low), ("high", high)):
            yield case(
                f"{id}: difference, {end} end",
                {**inputs, "what": end},
                value,
                0.03 * (high - low),
                "3 % of the width, as for every sampled range",
            )
        yield from shares(id, inputs, spreads, sides)


def shares(id, inputs, spreads, sides):
    """First-order Sobol indices of the difference, over even shares of each input's triangle."""
    problem = {"num_vars": len(spreads), "names": np.array(list(spreads)), "bounds": [[0, 1]] * len(spreads)}
    points = sobol_sample.sample(problem, SOBOL_BASE, calc_second_order=False, seed=SEED)
    points = np.clip(points, 1e-9, 1 - 1e-9)
    drawn = {name: at_share(spread, points[:, at]) for at, (name, spread) in enumerate(spreads.items())}
    one, other = sides(drawn)
    found = sobol.analyze(problem, one - other, calc_second_order=False, seed=SEED, num_resamples=100)
    for name, share in zip(spreads, found["S1"]):
        yield case(
            f"{id}: share of {name}",
            {**inputs, "what": "share", "input": name},
            round(float(share), 6),
            0.06,
            "twenty slices of 50 samples each see about 19/1000 of what is noise to them, and Saltelli's estimate of a "
            "thousand points is itself good to some three in a hundred",
        )


report(["numpy", "scipy", "SALib"], list(weighed()))
