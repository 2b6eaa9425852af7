"""A damp-free two-layer wall heated for 8 h, as one would write it with scipy: method of lines, 20 + 20 cells,
`solve_ivp` with BDF and the sparsity of the Jacobian. Prints the median time of a run in ms, its evaluations and the
shell's temperature at 1 h, as JSON. The air's film is a plain law in the surface temperature, the same as in the
bench beside it."""

import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

RUNS = int(sys.argv[1]) if len(sys.argv) > 1 else 7
START, HOT, HOUR = 298.15, 1173.15, 3600.0
CELLS = 20
LAYERS = [
    # thickness, density, k(T), c(T)
    (0.05, 1900, ([273.15, 1273.15], [0.9, 1.3]), ([273.15, 673.15, 1273.15], [800, 1050, 1110])),
    (0.04, 120, ([273.15, 773.15, 1273.15], [0.06, 0.16, 0.34]), ([273.15], [1000])),
]
INNER, STEEL, STEEL_HEAT = 0.1, 0.0015, 7850 * 490.0
SIGMA = 5.670374419e-8

width = np.repeat([layer[0] / CELLS for layer in LAYERS], CELLS)
edge = INNER + np.concatenate([[0], np.cumsum(width)])
centre = (edge[:-1] + edge[1:]) / 2
volume = (edge[1:] ** 2 - edge[:-1] ** 2) / (2 * INNER)
inward = INNER * np.log(centre / edge[:-1])
outward = INNER * np.log(edge[1:] / centre)
steel_capacity = STEEL_HEAT * ((edge[-1] + STEEL) ** 2 - edge[-1] ** 2) / (2 * INNER)
outer_area = (edge[-1] + STEEL) / INNER
one, two = slice(0, CELLS), slice(CELLS, 2 * CELLS)


def properties(T):
    k = np.empty_like(T)
    heat = np.empty_like(T)
    for part, (_, density, conductivity, capacity) in zip((one, two), LAYERS):
        k[part] = np.interp(T[part], *conductivity)
        heat[part] = density * np.interp(T[part], *capacity)
    return k, heat


def change(_, y):
    T, shell = y[:-1], y[-1]
    k, heat = properties(T)
    flux = np.empty(len(T) + 1)
    flux[0] = (HOT - T[0]) / (inward[0] / k[0])
    flux[1:-1] = (T[:-1] - T[1:]) / (outward[:-1] / k[:-1] + inward[1:] / k[1:])
    flux[-1] = (T[-1] - shell) / (outward[-1] / k[-1])
    lost = outer_area * (1.4 * abs(shell - START) ** 0.25 * (shell - START) + 0.8 * SIGMA * (shell**4 - START**4))
    return np.append((flux[:-1] - flux[1:]) / (heat * volume), (flux[-1] - lost) / steel_capacity)


size = 2 * CELLS + 1
sparsity = diags([np.ones(size - 1), np.ones(size), np.ones(size - 1)], [-1, 0, 1])
options = {"method": "BDF", "jac_sparsity": sparsity, "rtol": 1e-3, "atol": 0.1, "t_eval": [HOUR, 8 * HOUR]}

times = []
for _ in range(RUNS):
    begin = time.perf_counter()
    answer = solve_ivp(change, (0, 8 * HOUR), np.full(size, START), **options)
    times.append(1000 * (time.perf_counter() - begin))
print(
    json.dumps(
        {
            "median_ms": float(np.median(times)),
            "evaluations": int(answer.nfev),
            "shell_1h_K": float(answer.y[-1, 0]),
            "shell_8h_K": float(answer.y[-1, 1]),
        }
    )
)
