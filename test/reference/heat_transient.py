"""Heat conduction over time: series of the textbooks, and walls solved by another method than ours.

Walls: method of lines with cell-centred unknowns in the heat content of a cell (not its temperature), conductances of
half cells in series with k at the cell's own temperature, steel as a thin node, `solve_ivp` with BDF. None of it is
how the program does it: nodes on faces, integrals of k, TR-BDF2.
"""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.sparse import diags
from scipy.special import erfc, erfcx, j0, j1, jn_zeros

from _report import case, report

SIGMA = 5.670374419e-8
ZERO = 273.15
HOUR = 3600.0
LATENT, WATER, BOIL = 2.256e6, 4190.0, 373.15


# Series: temperature share still to go, after a body is put into a stream at another temperature.
def eigenvalues(equation, biot, edges):
    return [brentq(equation, low + 1e-12, high - 1e-12, args=(biot,), xtol=1e-14) for low, high in edges]


def slab(biot, fourier, x):
    edges = [(n * np.pi, n * np.pi + np.pi / 2) for n in range(60)]
    total = 0.0
    for z in eigenvalues(lambda z, b: z * np.sin(z) - b * np.cos(z), biot, edges):
        total += 4 * np.sin(z) / (2 * z + np.sin(2 * z)) * np.exp(-z * z * fourier) * np.cos(z * x)
    return total


def cylinder(biot, fourier, x):
    zeros0, zeros1 = jn_zeros(0, 60), np.concatenate([[0], jn_zeros(1, 59)])
    total = 0.0
    for z in eigenvalues(lambda z, b: z * j1(z) - b * j0(z), biot, zip(zeros1, zeros0)):
        total += 2 / z * j1(z) / (j0(z) ** 2 + j1(z) ** 2) * np.exp(-z * z * fourier) * j0(z * x)
    return total


def sphere(biot, fourier, x):
    edges = [(n * np.pi, (n + 1) * np.pi) for n in range(60)]
    total = 0.0
    for z in eigenvalues(lambda z, b: z * np.cos(z) - (1 - b) * np.sin(z), biot, edges):
        shape = np.sin(z * x) / (z * x) if x > 0 else 1.0
        total += 4 * (np.sin(z) - z * np.cos(z)) / (2 * z - np.sin(2 * z)) * np.exp(-z * z * fourier) * shape
    return total


def half_space_film(conductivity, heat, film, time, depth):
    root = np.sqrt(conductivity / heat * time)
    a = depth / (2 * root)
    return erfc(a) - np.exp(-a * a) * erfcx(a + film * root / conductivity)


def half_space_flux(conductivity, heat, flux, time, depth):
    root = np.sqrt(conductivity / heat * time)
    a = depth / (2 * root)
    return flux / conductivity * (2 * root / np.sqrt(np.pi) * np.exp(-a * a) - depth * erfc(a))


SERIES = "the series is exact; 200 cells and fine steps leave less than one part in ten thousand"


def body(id, function, biot, fourier, x, power):
    inputs = {"kind": "body", "power": power, "biot": biot, "fourier": fourier, "x": x}
    return case(id, inputs, float(function(biot, fourier, x)), 1e-4, SERIES)


# Walls.
class Wall:
    """Layers as dicts of thickness_m, density_kg_m3, k and c as [T, values] pairs, water as a share of dry mass."""

    def __init__(self, power, inner, layers, steel, outward, start, cells):
        self.start, self.steel, self.outward = start, steel, outward
        counts = [cells] * len(layers)
        width = np.concatenate([np.full(n, layer["thickness_m"] / n) for n, layer in zip(counts, layers)])
        edge = inner + np.concatenate([[0], np.cumsum(width)])
        centre = (edge[:-1] + edge[1:]) / 2
        self.layers = layers
        self.parts = [slice(i * cells, (i + 1) * cells) for i in range(len(layers))]

        def volume(a, b):
            return (b ** (power + 1) - a ** (power + 1)) / ((power + 1) * inner**power)

        def resistance(a, b):
            if power == 0:
                return b - a
            return inner * np.log(b / a) if power == 1 else inner**2 * (1 / a - 1 / b)

        self.volume = volume(edge[:-1], edge[1:])
        self.near, self.far = resistance(edge[:-1], centre), resistance(centre, edge[1:])
        self.outer_area = ((edge[-1] + steel["thickness_m"]) / inner) ** power
        self.steel_volume = volume(edge[-1], edge[-1] + steel["thickness_m"])
        self.cells = len(width)
        self.tables = [self.inverse(layer) for layer in layers]
        self.steel_table = self.inverse({**steel, "water": 0.0})

    def inverse(self, layer):
        """Heat in J/m3 from the start at a fine scale of temperatures, the plateau of the water as two points."""
        T = np.union1d(np.linspace(250, 1600, 2701), [BOIL, self.start])
        heat = layer["density_kg_m3"] * np.interp(T, *layer["c"])
        total = np.concatenate([[0], np.cumsum((heat[1:] + heat[:-1]) / 2 * np.diff(T))])
        if layer["water"] > 0:
            kg = layer["water"] * layer["density_kg_m3"]
            total = total + kg * WATER * np.minimum(T - T[0], BOIL - T[0])
            at = np.searchsorted(T, BOIL)
            T = np.insert(T, at + 1, BOIL + 1e-3)
            total = np.insert(total, at + 1, total[at])
            total[at + 1 :] += kg * LATENT
        return T, total - np.interp(self.start, T, total)

    def temperatures(self, content):
        T = np.empty(self.cells)
        for part, (scale, heat) in zip(self.parts, self.tables):
            T[part] = np.interp(content[part] / self.volume[part], heat, scale)
        scale, heat = self.steel_table
        return T, np.interp(content[-1] / self.steel_volume, heat, scale)

    def conductivities(self, T):
        k = np.empty(self.cells)
        for part, layer in zip(self.parts, self.layers):
            k[part] = np.interp(T[part], *layer["k"])
        return k

    def into(self, T, k, drive, time):
        if drive["kind"] == "flux":
            return 0.0
        return (np.interp(time, *drive["points"]) - T[0]) / (self.near[0] / k[0])

    def change(self, time, y, drive):
        T, shell = self.temperatures(y[: self.cells + 1])
        k = self.conductivities(T)
        flux = np.empty(self.cells + 1)
        flux[0] = self.into(T, k, drive, time)
        flux[1:-1] = (T[:-1] - T[1:]) / (self.far[:-1] / k[:-1] + self.near[1:] / k[1:])
        flux[-1] = (T[-1] - shell) / (self.far[-1] / k[-1])
        lost = self.outer_area * self.outward(shell)
        return np.concatenate([flux[:-1] - flux[1:], [flux[-1] - lost, flux[0]]])

    def run(self, phases, times):
        """Shell, face and heat in at each of the times, and the hottest the shell is, and when."""
        n = self.cells + 2
        pattern = diags([np.ones(n - 1), np.ones(n), np.ones(n - 1)], [-1, 0, 1]).tolil()
        pattern[n - 1, 0] = 1
        y, begin, found, top = np.zeros(n), 0.0, {}, (-1.0, 0.0)
        for end, drive in phases:
            kinks = [t for t in drive.get("points", [[]])[0] if begin < t < end]
            for a, b in zip([begin, *kinks], [*kinks, end]):
                answer = solve_ivp(
                    self.change,
                    (a, b),
                    y,
                    method="BDF",
                    jac_sparsity=pattern,
                    rtol=1e-6,
                    atol=1.0,
                    max_step=60.0 if self.is_wet() else np.inf,
                    first_step=1e-3,
                    dense_output=True,
                    args=(drive,),
                )
                assert answer.success, answer.message
                for time in [t for t in times if a < t <= b]:
                    found[time] = self.seen(answer.sol(time))
                grid = np.linspace(a, b, 1 + int((b - a) / 10))
                shells = [self.temperatures(state[:-1])[1] for state in answer.sol(grid).T]
                best = int(np.argmax(shells))
                if shells[best] > top[0]:
                    top = (float(shells[best]), float(grid[best]))
                y = answer.y[:, -1]
            begin = end
        return found, top

    def is_wet(self):
        return any(layer["water"] > 0 for layer in self.layers)

    def seen(self, y):
        return {"shell": float(self.temperatures(y[:-1])[1]), "in": float(y[-1])}


def brick(thickness, density, k, c, water=0.0):
    return {"thickness_m": thickness, "density_kg_m3": density, "k": k, "c": c, "water": water}


def celsius(*pairs):
    return [[ZERO + t for t, _ in pairs], [value for _, value in pairs]]


def flat(value):
    return [[300.0], [value]]


STEEL = {"thickness_m": 0.0015, "density_kg_m3": 7850, "c": flat(490.0)}
WARMER_STEEL = {"thickness_m": 0.0015, "density_kg_m3": 7850, "c": celsius((20, 440), (100, 488), (200, 530), (400, 606))}
A = [brick(0.05, 2000, flat(1.2), flat(1000.0)), brick(0.04, 250, flat(0.15), flat(1000.0))]
B = [
    brick(0.05, 1900, celsius((0, 0.9), (1000, 1.3)), celsius((0, 800), (400, 1050), (1000, 1110))),
    brick(0.04, 120, celsius((0, 0.06), (500, 0.16), (1000, 0.34)), flat(1000.0)),
]
AIR = ZERO + 25


def plain_film(T):
    return 10 * (T - AIR)


def painted_still(T):
    return 6 * (T - AIR) + 0.8 * SIGMA * (T**4 - AIR**4)


def churchill_chu():
    """Upright wall 0.4 m high, emissivity 0.8, in still air: air by CoolProp at the film, Nusselt number by ht."""
    from CoolProp.CoolProp import PropsSI
    from ht import Nu_vertical_plate_Churchill
    from scipy.interpolate import CubicSpline

    surface = AIR + np.geomspace(0.02, 400, 300)

    def lost(T):
        film = (T + AIR) / 2

        def air(name):
            return PropsSI(name, "T", film, "P", 101325, "Air")

        viscosity = air("V") / air("D")
        grashof = 9.80665 / film * (T - AIR) * 0.4**3 / viscosity**2
        convected = Nu_vertical_plate_Churchill(air("PRANDTL"), grashof) * air("L") / 0.4 * (T - AIR)
        return convected + 0.8 * SIGMA * (T**4 - AIR**4)

    spline = CubicSpline(np.append(AIR, surface), np.append(0.0, [lost(T) for T in surface]))
    return lambda T: float(spline(max(T, AIR)))


def step_to(kelvin):
    return {"kind": "temperature", "points": [[0.0], [kelvin]]}


SHUT = {"kind": "flux"}
RAMP = {"kind": "temperature", "points": [[0.0, 2400.0, 6000.0], [AIR, ZERO + 1000, ZERO + 1000]]}

OUTWARDS = {"10 W/m2K": plain_film, "6 W/m2K and 0.8": painted_still, "upright 0.4 m, 0.8": churchill_chu()}
DRY = "both solve the same equations; ours with 24 cells a layer and 0.3 K a step is to be within 0.5 K"
WET = "as dry; and the boiling front of either passes from cell to cell, which moves it by a part of a cell"
HEAT = "0.5 % of the heat put in: what a fuel bill can tell"
TIME = "two minutes: the top is flat, 0.05 K lower a minute or two beside it"


def rounded(value, digits=7):
    """As many digits as the steps of `solve_ivp` are good for: another processor rounds them alike."""
    return float(f"{value:.{digits}g}")


def wall(name, power, inner, layers, steel, outward, phases, times, cells, K=0.5, why=DRY):
    solved = Wall(power, inner, layers, steel, OUTWARDS[outward], AIR, cells)
    found, top = solved.run(phases, times)
    programmes = [
        {"until_s": until, "drive": {**drive, "points": list(zip(*drive["points"]))} if "points" in drive else drive}
        for until, drive in phases
    ]
    inputs = {
        "kind": "wall",
        "power": power,
        "inner_radius_m": inner,
        "layers": layers,
        "shell": steel,
        "outward": outward,
        "start_K": AIR,
        "phases": programmes,
    }
    cases = []

    def add(quantity, at_s, value, tolerance, reason):
        what = f"{name}: {quantity}" + (f" at {at_s / HOUR:g} h" if at_s is not None else "")
        cases.append(case(what, {**inputs, "quantity": quantity, "at_s": at_s}, value, tolerance, reason))

    for time in times:
        add("shell", time, rounded(found[time]["shell"]), K, why)
        heat = rounded(found[time]["in"], 6)
        add("heat in", time, heat, 0.005 * heat, HEAT)
    if phases[-1][1] is SHUT:
        add("shell at its hottest", None, rounded(top[0]), K, why)
        add("time of it", None, top[1], 120.0, TIME)
    return cases


def all_walls():
    hot = [(4 * HOUR, step_to(ZERO + 900))]
    long = [(8 * HOUR, step_to(ZERO + 900))]
    soak = [(HOUR, step_to(ZERO + 900)), (5 * HOUR, SHUT)]
    fired = [(6000.0, RAMP), (5 * HOUR, SHUT)]
    damp = [{**B[0], "water": 0.05}, B[1]]
    hours = [0.5 * HOUR, HOUR, 2 * HOUR, 4 * HOUR]
    return [
        *wall("constant properties", 1, 0.1, A, STEEL, "10 W/m2K", hot, hours, 80),
        *wall("k(T)", 1, 0.1, B, STEEL, "upright 0.4 m, 0.8", long, [0.5 * HOUR, HOUR, 8 * HOUR], 80),
        *wall("k(T), bore shut after 1 h", 1, 0.1, B, STEEL, "upright 0.4 m, 0.8", soak, [5 * HOUR], 80),
        *wall("plane, fired", 0, 1.0, B, WARMER_STEEL, "6 W/m2K and 0.8", fired, [HOUR, 3 * HOUR], 60),
        *wall("ball, fired", 2, 0.15, B, WARMER_STEEL, "6 W/m2K and 0.8", fired, [HOUR, 3 * HOUR], 60),
        *wall("damp furnace", 1, 0.127, damp, WARMER_STEEL, "6 W/m2K and 0.8", fired, [HOUR, 2 * HOUR, 4 * HOUR], 40, why=WET),
    ]


def half_space(id, kind, function, strength, depth, tolerance):
    inputs = {"kind": kind, "conductivity_W_mK": 0.8, "heat_J_m3K": 1.6e6, "strength": strength, "at_s": 600.0, "depth_m": depth}
    return case(id, inputs, float(function(0.8, 1.6e6, strength, 600.0, depth)), tolerance, SERIES)


report(
    ["scipy", "ht", "CoolProp"],
    [
        body("slab, Bi 1, Fo 0.5: middle", slab, 1.0, 0.5, 0.0, 0),
        body("slab, Bi 1, Fo 0.5: surface", slab, 1.0, 0.5, 1.0, 0),
        body("cylinder, Bi 2, Fo 0.3: axis", cylinder, 2.0, 0.3, 0.0, 1),
        body("cylinder, Bi 2, Fo 0.3: surface", cylinder, 2.0, 0.3, 1.0, 1),
        body("ball, Bi 5, Fo 0.2: middle", sphere, 5.0, 0.2, 0.0, 2),
        half_space("half-space, film 100 W/m2K, 600 s: surface", "half-space film", half_space_film, 100.0, 0.0, 1e-4),
        half_space("half-space, film 100 W/m2K, 600 s: 10 mm", "half-space film", half_space_film, 100.0, 0.01, 1e-4),
        half_space("half-space, 10 kW/m2, 600 s: rise of the surface", "half-space flux", half_space_flux, 1e4, 0.0, 0.05),
        *all_walls(),
    ],
)
