"""Steady heat by other means than ours: correlations of `ht`, air of CoolProp, and numbers where we use formulas."""

from math import log, pi, sqrt

import numpy as np
import scipy.sparse as sparse
from CoolProp.CoolProp import PropsSI
from ht import (
    Nu_cylinder_Churchill_Bernstein,
    Nu_horizontal_plate_laminar_Baehr,
    Nu_horizontal_plate_McAdams,
    Nu_horizontal_plate_turbulent_Schlichting,
    Nu_vertical_plate_Churchill,
)
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq
from scipy.sparse.linalg import spsolve

from _report import case, report

SIGMA = 5.670374419e-8
GRAVITY = 9.80665
ATMOSPHERE = 101325
SAME = 1e-9
SAME_WHY = "the same correlation, written twice: only rounding may differ"


def nusselt():
    for prandtl, grashof in ((0.69, 2.63e9), (0.71, 1e4), (0.7, 3e7), (0.72, 2e10)):
        value = Nu_vertical_plate_Churchill(Pr=prandtl, Gr=grashof)
        yield nu("vertical plate", value, prandtl=prandtl, grashof=grashof)
    for prandtl, grashof in ((0.7, 3e5), (0.7, 6e6), (0.71, 3e8)):
        value = Nu_horizontal_plate_McAdams(Pr=prandtl, Gr=grashof, buoyancy=True)
        yield nu("plate facing up", value, prandtl=prandtl, grashof=grashof)
    # Between the two branches ours is continuous and theirs jumps.
    value = Nu_horizontal_plate_McAdams(Pr=0.7, Gr=9e6 / 0.7, buoyancy=True)
    jump = 0.15 * (9e6) ** (1 / 3) - value
    yield case(
        "Nusselt number, plate facing up, prandtl 0.7, between the branches",
        {"of": "nusselt", "kind": "plate facing up", "prandtl": 0.7, "grashof": 9e6 / 0.7},
        value,
        jump * (1 + 1e-9),
        "theirs changes branch at Ra 1e7 with a jump of 6 %, ours where the branches meet, 4.7e6, without one",
    )
    for prandtl, grashof in ((0.7, 3e5), (0.7, 1e8)):
        value = Nu_horizontal_plate_McAdams(Pr=prandtl, Gr=grashof, buoyancy=False)
        yield nu("plate facing down", value, prandtl=prandtl, grashof=grashof)
    for prandtl, reynolds in ((0.7, 500), (0.7, 5e4), (0.71, 4e5)):
        value = Nu_cylinder_Churchill_Bernstein(Re=reynolds, Pr=prandtl)
        yield nu("wind across a cylinder", value, prandtl=prandtl, reynolds=reynolds)
    for prandtl, reynolds in ((0.7, 2e4), (0.71, 3e5)):
        parts = (
            Nu_horizontal_plate_laminar_Baehr(Re=reynolds, Pr=prandtl),
            Nu_horizontal_plate_turbulent_Schlichting(Re=reynolds, Pr=prandtl),
        )
        yield nu("wind along a plate", sqrt(parts[0] ** 2 + parts[1] ** 2), prandtl=prandtl, reynolds=reynolds)


def nu(kind, value, **inputs):
    name = ", ".join(f"{key} {number:g}" for key, number in inputs.items())
    return case(f"Nusselt number, {kind}, {name}", {"of": "nusselt", "kind": kind, **inputs}, value, value * SAME, SAME_WHY)


def air_of(T, pressure=ATMOSPHERE):
    viscosity = PropsSI("V", "T", T, "P", pressure, "Air") / PropsSI("D", "T", T, "P", pressure, "Air")
    return {
        "kinematic_viscosity_m2_s": viscosity,
        "conductivity_W_mK": PropsSI("L", "T", T, "P", pressure, "Air"),
        "prandtl": PropsSI("Prandtl", "T", T, "P", pressure, "Air"),
    }


def air():
    why = "0.03 %: straight lines between rows 20 K apart, rows kept to five digits"
    for T in (250, 270, 293.15, 310, 330, 350, 373.15, 410, 450, 490, 550, 610, 650, 700):
        yield from (
            case(f"air, {name} at {T:g} K", {"of": "air", "property": name, "T_K": T}, value, value * 3e-4, why)
            for name, value in air_of(T).items()
        )
    thin = "0.1 %: the viscosity by 1/p, as for an ideal gas, besides the lines"
    for T in (300, 450):
        value = air_of(T, 80000)["kinematic_viscosity_m2_s"]
        inputs = {"of": "air", "property": "kinematic_viscosity_m2_s", "T_K": T, "pressure_Pa": 80000}
        yield case(f"air, kinematic_viscosity_m2_s at {T} K and 80 kPa", inputs, value, value * 1e-3, thin)


def film(outside, surface):
    """Convection alone, W/m²K, with CoolProp's air and ht's correlations."""
    ambient = outside["air_K"]
    mean = (surface + ambient) / 2
    now = air_of(mean, outside.get("pressure_Pa", ATMOSPHERE))
    length = outside["length_m"]
    viscosity, conductivity, prandtl = now.values()
    grashof = GRAVITY / mean * abs(surface - ambient) * length**3 / viscosity**2
    hot = surface >= ambient
    if outside["face"] == "vertical":
        number = Nu_vertical_plate_Churchill(Pr=prandtl, Gr=grashof)
    else:
        number = Nu_horizontal_plate_McAdams(Pr=prandtl, Gr=grashof, buoyancy=(outside["face"] == "up") == hot)
    still = number * conductivity / length
    wind = outside["wind_m_s"]
    if wind == 0:
        return still
    along = outside.get("diameter_m") or (length if outside["face"] == "vertical" else 4 * length)
    reynolds = wind * along / viscosity
    if outside["face"] == "vertical" and "diameter_m" in outside:
        number = Nu_cylinder_Churchill_Bernstein(Re=reynolds, Pr=prandtl)
    else:
        number = sqrt(
            Nu_horizontal_plate_laminar_Baehr(Re=reynolds, Pr=prandtl) ** 2
            + Nu_horizontal_plate_turbulent_Schlichting(Re=reynolds, Pr=prandtl) ** 2
        )
    return (still**3 + (number * conductivity / along) ** 3) ** (1 / 3)


def loss(outside, surface):
    ambient = outside["air_K"]
    seen = outside.get("surroundings_K", ambient)
    radiated = outside["emissivity"] * SIGMA * (surface**4 - seen**4)
    return film(outside, surface) * (surface - ambient) + radiated - outside.get("sun_W_m2", 0)


SIDE = {"face": "vertical", "length_m": 0.4, "air_K": 298.15, "emissivity": 0.8, "wind_m_s": 0}
LID = {"face": "up", "length_m": 0.09, "air_K": 293.15, "emissivity": 0.9, "wind_m_s": 0}


def losses():
    why = "0.1 %: the same formulas on air that differs by up to 0.03 %, and a table in film temperature"
    for id, outside, surface in (
        ("side, still air, 120 °C", SIDE, 393.15),
        ("side, still air, 350 °C", SIDE, 623.15),
        ("side colder than the air", SIDE, 285.15),
        ("side in wind of 3 m/s", {**SIDE, "wind_m_s": 3, "diameter_m": 0.35}, 373.15),
        ("side in wind of 6 m/s, 80 kPa", {**SIDE, "wind_m_s": 6, "diameter_m": 0.35, "pressure_Pa": 80000}, 373.15),
        ("side in the sun, cold surroundings", {**SIDE, "sun_W_m2": 300, "surroundings_K": 270.0}, 340.0),
        ("lid, 60 °C", LID, 333.15),
        ("lid in wind of 3 m/s", {**LID, "wind_m_s": 3}, 450.0),
        ("lid colder than the air", LID, 283.15),
        ("floor on legs, 90 °C", {**LID, "face": "down"}, 363.15),
    ):
        expected = loss(outside, surface)
        yield case(f"loss flux, {id}", {"of": "loss", "outside": outside, "surface_K": surface}, expected, abs(expected) * 1e-3, why)


LINING = {"T_K": [273.15, 1273.15], "k_W_mK": [0.9, 1.3]}
FILL = {"T_K": [273.15, 773.15, 1273.15], "k_W_mK": [0.06, 0.16, 0.34]}
STEEL = {"T_K": [293.15, 873.15], "k_W_mK": [53.3, 34.0]}
CURVED = {"T_K": [293.15, 473.15, 673.15, 873.15, 1073.15], "k_W_mK": [0.045, 0.07, 0.10, 0.14, 0.19]}


def area(geometry, r):
    return {"plane": 1.0, "cylinder": 2 * pi * r, "sphere": 4 * pi * r**2}[geometry]


def through(layer, geometry, inner, hot, flow):
    """Cold side of one layer, by marching dT/dr = −flow/(area k) outwards."""
    if "gap_m" in layer:
        flux = flow / area(geometry, inner + layer["gap_m"] / 2)
        exchange = 1 / (1 / layer["hot_emissivity"] + 1 / layer["cold_emissivity"] - 1)

        def short(cold):
            k = PropsSI("L", "T", (hot + cold) / 2, "P", ATMOSPHERE, "Air")
            return k / layer["gap_m"] * (hot - cold) + exchange * SIGMA * (hot**4 - cold**4) - flux

        return inner + layer["gap_m"], brentq(short, 150, hot, xtol=1e-10)
    if "joint_m2K_W" in layer:
        return inner, hot - flow / area(geometry, inner) * layer["joint_m2K_W"]
    T, k = layer["k"]["T_K"], layer["k"]["k_W_mK"]
    outer = inner + layer["thickness_m"]
    slope = lambda r, y: [-flow / area(geometry, r) / np.interp(y[0], T, k)]
    answer = solve_ivp(slope, (inner, outer), [hot], rtol=1e-9, atol=1e-9, max_step=layer["thickness_m"] / 40)
    return outer, answer.y[0][-1]


def stack(geometry, inner, layers, hot, outward):
    def march(flow):
        r, T, faces = inner, hot, [hot]
        for layer in layers:
            r, T = through(layer, geometry, r, T, flow)
            faces.append(float(T))
        return r, faces

    def surplus(flow):
        r, faces = march(flow)
        return flow - outward(faces[-1]) * area(geometry, r)

    low, high = 1.0, 2.0
    while surplus(high) < 0:
        low, high = high, high * 1.25
    flow = brentq(surplus, low, high, rtol=1e-9)
    return {"flow_W": float(flow), "faces_K": march(flow)[1]}


def stacks():
    lined = [{"thickness_m": 0.05, "k": LINING}, {"thickness_m": 0.04, "k": FILL}, {"thickness_m": 0.0015, "k": STEEL}]
    perlite = [{"thickness_m": 0.03, "k": LINING}, {"thickness_m": 0.08, "k": CURVED}]
    gapped = [
        {"thickness_m": 0.06, "k": LINING},
        {"gap_m": 0.004, "hot_emissivity": 0.85, "cold_emissivity": 0.8},
        {"thickness_m": 0.02, "k": LINING},
        {"joint_m2K_W": 0.002},
        {"thickness_m": 0.0015, "k": STEEL},
    ]
    constant = [
        {"thickness_m": 0.05, "k": {"T_K": [273.15, 1273.15], "k_W_mK": [1.2, 1.2]}},
        {"thickness_m": 0.04, "k": {"T_K": [273.15, 1273.15], "k_W_mK": [0.15, 0.15]}},
    ]
    ten = {"film_W_m2K": 10, "air_K": 298.15}
    for id, geometry, inner, layers, hot, outside in (
        ("furnace wall, lining, fill, steel", "cylinder", 0.1, lined, 1173.15, SIDE),
        ("furnace wall, lining, fill, steel", "plane", 0, lined, 1173.15, SIDE),
        ("furnace wall, lining, fill, steel", "sphere", 0.1, lined, 1173.15, SIDE),
        ("thick loose fill", "cylinder", 0.125, perlite, 1050.0, SIDE),
        ("air gap and joint", "cylinder", 0.1, gapped, 900.0, SIDE),
        ("constant conductivities, film of 10 W/m²K", "cylinder", 0.1, constant, 1173.15, ten),
    ):
        outward = (lambda T: 10 * (T - 298.15)) if outside is ten else (lambda T: loss(SIDE, T))
        answer = stack(geometry, inner, layers, hot, outward)
        inputs = {"of": "stack", "geometry": geometry, "inner_radius_m": inner, "layers": layers, "hot_K": hot, "outside": outside}
        yield case(
            f"{id}, {geometry}",
            inputs,
            answer,
            2e-4 if outside is not ten else 1e-6,
            "share of the flow and of every rise above the air: air by table against CoolProp's; else the marching itself",
        )


def disk_to_disk(r, depth):
    """Share of one disk's radiation that meets the other: the fourfold integral, one angle done by symmetry."""
    x, w = np.polynomial.legendre.leggauss(60)
    radius, weight = r * (x + 1) / 2, r * w / 2
    angle, share = pi * (x + 1), pi * w
    r1, r2, a = np.meshgrid(radius, radius, angle, indexing="ij")
    weights = weight[:, None, None] * weight[None, :, None] * share[None, None, :]
    squared = r1**2 + r2**2 - 2 * r1 * r2 * np.cos(a) + depth**2
    return float(np.sum(weights * 2 * pi * r1 * r2 * depth**2 / (pi * squared**2)) / (pi * r**2))


def coaxial(r, depth):
    if depth == 0:
        return 1.0
    s = 2 + (depth / r) ** 2
    return (s - sqrt(s**2 - 4)) / 2


def hole(r, depth, rings=200):
    """Through a hole whose side takes up nothing: the side cut in rings, each sending back what it gets."""
    d = depth / rings
    disk = np.array([coaxial(r, i * d) for i in range(rings + 1)])
    end = pi * r**2
    ring = 2 * pi * r * d
    to_end = (disk[:-1] - disk[1:]) * end / ring
    i = np.arange(rings)
    apart = np.abs(i[:, None] - i[None, :])
    near = np.where(apart == 0, 0, apart - 1)
    # Ring to ring: what passes the disks between them. A ring sees itself by what neither of its ends gets.
    between = (disk[near] - 2 * disk[apart] + disk[np.minimum(apart + 1, rings)]) * end / ring
    own = 1 - 2 * to_end[0]
    exchange = np.where(apart == 0, own, between)
    # Hot end sends 1 per area, cold end 0.
    side = np.linalg.solve(np.eye(rings) - exchange, to_end)
    return float(disk[rings] + np.sum(side * to_end[::-1]) * ring / end)


def openings():
    for ratio in (0.5, 1, 2, 4):
        yield case(
            f"disk to disk, depth {ratio:g} radii",
            {"of": "disks", "radius_m": 0.04, "depth_m": 0.04 * ratio},
            disk_to_disk(0.04, 0.04 * ratio),
            1e-6,
            "an integral of a smooth function by 60 points a side",
        )
    for ratio in (0.1, 0.5, 1, 2, 4, 8):
        passed = hole(0.04, 0.04 * ratio)
        yield case(
            f"re-radiating hole, depth {ratio:g} radii",
            {"of": "hole", "radius_m": 0.04, "depth_m": 0.04 * ratio},
            passed,
            0.001 * passed,
            "0.1 %: ours is a closed approximation of what the rings solve",
        )


def band(T):
    """What a black body sends from 8 to 14 µm."""
    c1, c2 = 3.741771852e-16, 0.01438776877
    return quad(lambda x: c1 / x**5 / np.expm1(c2 / (x * T)), 8e-6, 14e-6, epsabs=0, epsrel=1e-11)[0]


def infrared():
    why = "0.01 K: the same integral of Planck's law, by 12 strips and by adaptive points"
    for emissivity, surface, room in ((0.23, 408.0, 293.15), (0.07, 400.0, 293.15), (0.9, 373.15, 293.15), (0.5, 600.0, 283.15)):
        seen = emissivity * band(surface) + (0.95 - emissivity) * band(room)
        reading = brentq(lambda T: 0.95 * band(T) - seen, 200, 900, xtol=1e-10)
        inputs = {"of": "infrared", "set_emissivity": 0.95, "emissivity": emissivity, "surroundings_K": room}
        yield case(f"infrared reading, emissivity {emissivity}, surface {surface:g} K", {**inputs, "surface_K": surface}, reading, 0.01, why)


def can(r, height, wall, cells):
    """Closed round can, bore at 1 and outside at 0, k 1 W/mK: heat through it by finite differences, W."""
    d = wall / cells
    nr, nz = round((r + wall) / d), round((height + 2 * wall) / d)
    a, c = np.meshgrid(np.arange(nr), np.arange(nz), indexing="ij")
    bore = ((a + 0.5) * d < r) & ((c + 0.5) * d > wall) & ((c + 0.5) * d < wall + height)
    index = np.where(bore, -1, np.cumsum(~bore).reshape(bore.shape) - 1)
    count = int((~bore).sum())
    rows, columns, values, diagonal, right = [], [], [], np.zeros(count), np.zeros(count)
    for da, dc in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        A, C = a + da, c + dc
        facing = 2 * pi * np.maximum(a, A) * d * d if da else pi * ((a + 1) ** 2 - a**2) * d**2
        g = np.broadcast_to(facing / d, a.shape)
        away = (A >= nr) | (C < 0) | (C >= nz)
        axis = A < 0
        inside = ~away & ~axis
        neighbour = np.where(inside, index[np.clip(A, 0, nr - 1), np.clip(C, 0, nz - 1)], -2)
        solid = ~bore
        for mask, held in ((solid & away, 0.0), (solid & (neighbour == -1), 1.0)):
            np.add.at(diagonal, index[mask], 2 * g[mask])
            np.add.at(right, index[mask], 2 * g[mask] * held)
        joined = solid & (neighbour >= 0)
        np.add.at(diagonal, index[joined], g[joined])
        rows.append(index[joined])
        columns.append(neighbour[joined])
        values.append(-g[joined])
    every = np.arange(count)
    matrix = sparse.csc_matrix(
        (np.concatenate([*values, diagonal]), (np.concatenate([*rows, every]), np.concatenate([*columns, every])))
    )
    T = spsolve(matrix, right)
    return float(np.sum(right * (1 - T)))


def corners():
    for r, height, wall in ((0.1, 0.25, 0.1), (0.1, 0.2, 0.05), (0.15, 0.4, 0.125), (0.12, 0.12, 0.08)):
        coarse, fine = can(r, height, wall, 10), can(r, height, wall, 20)
        # The error falls with the cell near the re-entrant edge to the power 4/3.
        whole = fine + (fine - coarse) / (2 ** (4 / 3) - 1)
        flat = 2 * pi * height / log((r + wall) / r) + 2 * pi * r**2 / wall
        rims = whole - flat
        yield case(
            f"both rims of a closed can, bore {2 * r:g} × {height:g} m, wall {wall:g} m",
            {"of": "rims", "bore_radius_m": r, "bore_height_m": height, "wall_m": wall},
            rims,
            rims * 0.05,
            "5 %: one factor for every shape against finite differences of the whole can; the rims are a fifth of its loss",
        )


report(
    ["ht", "CoolProp", "scipy"],
    [*nusselt(), *air(), *losses(), *stacks(), *openings(), *infrared(), *corners()],
)
