"""Bayes' rule for readings of a build by other hands: integrals, matrices and weights on random draws."""

import numpy as np
from scipy.integrate import quad
from scipy.stats import norm, triang

from _report import case, report

SAMPLES = 400_000
SEED = 20_260_412


def tri(low, typical, high):
    return {"low": low, "typical": typical, "high": high}


def triangle(spread):
    low, typical, high = spread["low"], spread["typical"], spread["high"]
    return triang((typical - low) / (high - low), low, high - low)


def moments_of_product(prior, low, high, value, error):
    """Mean and standard deviation of prior × likelihood, by quadrature."""
    weight = lambda x: prior.pdf(x) * norm.pdf(value, x, error)
    points = sorted({min(high, max(low, value + k * error)) for k in (-6, -3, -1, 0, 1, 3, 6)})
    integral = lambda of: quad(of, low, high, points=points, limit=400, epsabs=0, epsrel=1e-11)[0]
    total = integral(weight)
    mean = integral(lambda x: x * weight(x)) / total
    return mean, float(np.sqrt(integral(lambda x: (x - mean) ** 2 * weight(x)) / total))


BUCKETS = {
    "vague bucket": (tri(1700, 1850, 2000), 1780, 90),
    "usual bucket": (tri(1700, 1850, 2000), 1800, 45),
    "sharp bucket": (tri(1700, 1850, 2000), 1900, 10),
    "bucket of a leaning range": (tri(80, 100, 170), 130, 8),
}


def buckets():
    for name, (spread, value, error) in BUCKETS.items():
        inputs = {"kind": "bucket", "spread": spread, "value": value, "error": error}
        prior = triangle(spread)
        bell = norm(prior.mean(), prior.std())
        far = 12 * prior.std()
        mean, deviation = moments_of_product(bell, bell.mean() - far, bell.mean() + far, value, error)
        yield case(
            f"{name}: bell curve",
            inputs,
            {"mean": mean, "deviation": deviation},
            1e-6 * prior.mean(),
            "the same rule in closed form and by quadrature: a millionth of the value",
        )
        mean, deviation = moments_of_product(prior, spread["low"], spread["high"], value, error)
        yield case(
            f"{name}: triangle",
            inputs,
            {"mean": mean, "deviation": deviation},
            0.05 * prior.std(),
            "the triangle taken as a bell curve of its mean and deviation: a twentieth of that deviation",
        )


def linear():
    """Inputs and readings of straight models: the matrix form of the rule, all readings at once."""
    spreads = {"a": tri(0, 3, 6), "b": tri(10, 14, 18), "c": tri(1, 1.5, 5)}
    mean = np.array([triangle(s).mean() for s in spreads.values()])
    deviation = np.array([triangle(s).std() for s in spreads.values()])
    readings = [
        {"slopes": [2, 1, 0], "value": 22.0, "error": 0.8, "model": 0.0},
        {"slopes": [1, -1, 1], "value": -9.0, "error": 0.5, "model": 0.7},
        {"slopes": [1, -1, 1], "value": -8.2, "error": 0.5, "model": 0.7},
        {"slopes": [0, 1, 2], "value": 18.0, "error": 1.5, "model": 0.7},
    ]
    slopes = np.array([one["slopes"] for one in readings], dtype=float)
    shared = np.array([one["model"] for one in readings])
    noise = np.diag([one["error"] ** 2 for one in readings]) + np.outer(shared, shared)
    for name, correlation in (("apart", 0.0), ("a with b", 0.6)):
        # Of ranks; of the bell curves below them 2 sin(π ρ / 6).
        r = 2 * np.sin(np.pi * correlation / 6)
        joint = np.eye(3)
        joint[0, 1] = joint[1, 0] = r
        prior = joint * np.outer(deviation, deviation)
        gain = prior @ slopes.T @ np.linalg.inv(slopes @ prior @ slopes.T + noise)
        after = mean + gain @ (np.array([one["value"] for one in readings]) - slopes @ mean)
        covariance = prior - gain @ slopes @ prior
        yield case(
            f"four readings, inputs {name}",
            {"kind": "linear", "spreads": spreads, "readings": readings, "rank": correlation},
            {"mean": after.tolist(), "deviation": np.sqrt(np.diag(covariance)).tolist()},
            1e-7,
            "the same algebra one reading after the other: rounding, and readings that are exact to a billionth",
        )


MODELS = {
    "a ratio": ({"above": tri(2, 3, 4.5), "below": tri(0.6, 1, 1.2)}, lambda x: x["above"] / x["below"]),
    "heat through a wall, W": (
        {
            "conductivity_W_mK": tri(0.15, 0.22, 0.40),
            "area_m2": tri(0.45, 0.5, 0.55),
            "rise_dK": tri(900, 1000, 1150),
            "thickness_m": tri(0.045, 0.05, 0.055),
        },
        lambda x: x["conductivity_W_mK"] * x["area_m2"] * x["rise_dK"] / x["thickness_m"],
    ),
}
WEIGHED = {
    "a ratio": [(3.3, 0.3), (2.9, 0.1), (3.9, 0.05)],
    "heat through a wall, W": [(2500, 300), (2000, 100), (3100, 60)],
}


def weighted_point(values, weights, share):
    order = np.argsort(values)
    return float(np.interp(share, np.cumsum(weights[order]) - weights[order] / 2, values[order]))


def weights():
    """Bent models: every random draw counts by how well it predicts the reading."""
    for id, (spreads, model) in MODELS.items():
        random = np.random.default_rng(SEED)
        draws = {name: triangle(s).rvs(SAMPLES, random_state=random) for name, s in spreads.items()}
        results = model(draws)
        low, high = np.quantile(results, [0.025, 0.975])
        for value, error in WEIGHED[id]:
            likely = norm.pdf(results, value, error)
            likely /= likely.sum()
            yield case(
                f"{id}, {value} ± {error} read",
                {"kind": "weights", "model": id, "spreads": spreads, "value": value, "error": error},
                {"low": weighted_point(results, likely, 0.025), "high": weighted_point(results, likely, 0.975)},
                0.08 * float(high - low),
                "8 % of the width before the reading: triangles taken as bell curves, and the model as a straight line",
            )


report(["numpy", "scipy"], [*buckets(), *linear(), *weights()])
