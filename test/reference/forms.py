"""Flat patterns without any formula of a developed cone: facets laid flat side by side, and tubes cut ray by ray."""

from math import acos, atan2, cos, pi, sin, sqrt

import numpy as np
from scipy.optimize import brentq, fsolve
from shapely.geometry import Polygon

from _report import case, report

INCH = 0.0254
FACETS = 20000
RAYS = 4000


def unroll(bottom_radius_m, top_radius_m, height_m):
    """Half of the shell as plane trapezoids, hinged along their straight sides and laid flat from x = 0 on."""
    step = pi / FACETS
    low, high = 2 * bottom_radius_m * sin(step / 2), 2 * top_radius_m * sin(step / 2)
    leg = sqrt(height_m**2 + (top_radius_m - bottom_radius_m) ** 2)
    lean = np.arcsin((high - low) / (2 * leg))
    # Every trapezoid turns clockwise by twice the lean of its legs; its base points half way between.
    turns = -lean * (2 * np.arange(FACETS) + 1)
    x = np.concatenate([[0], np.cumsum(low * np.cos(turns))])
    y = np.concatenate([[0], np.cumsum(low * np.sin(turns))])
    legs = -lean * 2 * np.arange(FACETS + 1)
    top_x, top_y = x - leg * np.sin(legs), y + leg * np.cos(legs)
    sheet = Polygon([*zip(x, y), *zip(top_x[::-1], top_y[::-1])])
    return {
        "across the lower edge": 2 * x[-1],
        "across the upper edge": 2 * top_x[-1],
        "rise of the lower edge": -y[-1],
        "rise of the upper edge": leg - top_y[-1],
        "area": 2 * sheet.area,
    }


def swing(bottom_radius_m, top_radius_m, height_m):
    """Sheet radii and angle as what three conditions leave: each arc as long as its circle, the slant between them."""
    leg = sqrt(height_m**2 + (top_radius_m - bottom_radius_m) ** 2)
    small, large = sorted([bottom_radius_m, top_radius_m])

    def misses(unknown):
        inner, outer, angle = unknown
        return [inner * angle - 2 * pi * small, outer * angle - 2 * pi * large, outer - inner - leg]

    start = [small * 5, small * 5 + leg, 1]
    inner, outer, angle = fsolve(misses, start, xtol=1e-13)
    return {"inner sheet radius": inner, "outer sheet radius": outer, "angle": angle}


def tube_hole(bottom_radius_m, top_radius_m, height_m, radius_m, offset_m, tilt_rad, out_m, up_m):
    """Rays along the tube's side, each followed to where it meets the shell; laid flat by turn and height."""
    wide = (top_radius_m - bottom_radius_m) / height_m
    along = np.array([cos(tilt_rad), 0, sin(tilt_rad)])
    upward = np.array([-sin(tilt_rad), 0, cos(tilt_rad)])
    start = np.array([out_m, offset_m, up_m])

    def outside(s, foot):
        x, y, z = foot + s * along
        return sqrt(x**2 + y**2) - (bottom_radius_m + wide * z)

    grazing = offset_m + radius_m > bottom_radius_m and wide == 0
    first = acos((bottom_radius_m - offset_m) / radius_m) if grazing else 0.0
    edge = []
    for ray in np.linspace(first, 2 * pi - first, RAYS + 1):
        foot = start + radius_m * (np.array([0, cos(ray), 0]) + sin(ray) * upward)
        # From the nearest the ray comes to the shell's axis, where it is inside or on the shell, outward.
        nearest = -foot[0] / along[0]
        if outside(nearest, foot) >= 0:
            s = nearest
        else:
            s = brentq(outside, nearest, nearest + 10 * bottom_radius_m, args=(foot,), xtol=1e-14)
        x, y, z = foot + s * along
        edge.append((atan2(y, x), z))
    flat = Polygon([(bottom_radius_m * turn, z) for turn, z in edge])
    left, low, right, high = flat.bounds
    return {
        "width round the shell": right - left,
        "lowest": low,
        "highest": high,
        "area": flat.area,
    }


FACET = "20,000 facets a half turn are short of the circle by 4e-9 of it"
SOLVED = "both solve the same conditions: only the solver's last digits may differ"
POLYGON = "our outline has 98 corners: its area is short by under a thousandth, its ends are found exactly"


def flat_cases(id, **cone):
    unit = {"area": "m²"}
    return [
        case(f"{id}, {name}", {"kind": "flat", "quantity": name, **cone}, value, 1e-7 if name in unit else 1e-6, FACET)
        for name, value in unroll(**cone).items()
    ]


def swing_cases(id, **cone):
    return [
        case(f"{id}, {name}", {"kind": "swing", "quantity": name, **cone}, value, 1e-8 * value, SOLVED)
        for name, value in swing(**cone).items()
    ]


def hole_cases(id, **both):
    return [
        case(
            f"{id}, {name}",
            {"kind": "hole", "quantity": name, **both},
            value,
            1e-3 * value if name == "area" else 5e-5,
            POLYGON if name == "area" else "4,000 rays and 98 corners: the extreme lies up to 0.05 mm beside a corner",
        )
        for name, value in tube_hole(**both).items()
    ]


STRAIGHT = {"bottom_radius_m": 4.5 * INCH, "top_radius_m": 4.5 * INCH, "height_m": 12 * INCH}
CONE = {"bottom_radius_m": 4.5 * INCH, "top_radius_m": 5.5 * INCH, "height_m": 13 * INCH}
OUTER = {"bottom_radius_m": 6.0 * INCH, "top_radius_m": 6.0 * INCH, "height_m": 14 * INCH}


def tube(radius_m, offset_m, tilt_rad, up_m):
    return {
        "radius_m": radius_m,
        "offset_m": offset_m,
        "tilt_rad": tilt_rad,
        "out_m": sqrt((4.5 * INCH) ** 2 - offset_m**2),
        "up_m": up_m,
    }


TANGENT = tube(0.019, 4.5 * INCH - 0.019, 0.0, 0.05)
TILTED = tube(0.024, 4.5 * INCH - 0.019, 10 * pi / 180, 0.05)

report(
    ["numpy", "scipy", "shapely"],
    [
        *flat_cases("form 9/11 × 13 in", **CONE),
        *flat_cases("form 12 × 14 in, straight", **OUTER),
        *flat_cases("form wider below 0.20/0.15 × 0.30 m", bottom_radius_m=0.2, top_radius_m=0.15, height_m=0.3),
        *swing_cases("form 9/11 × 13 in", **CONE),
        *swing_cases("form 0.30/0.60 × 0.30 m", bottom_radius_m=0.15, top_radius_m=0.3, height_m=0.3),
        *hole_cases("level tangent tube 38 mm in a 9 in bore", **STRAIGHT, **TANGENT),
        *hole_cases("tube 48 mm grazing a 9 in bore, rising 10°", **STRAIGHT, **TILTED),
        *hole_cases("the same tube in a 12 in outer form", **OUTER, **{**TILTED, "up_m": TILTED["up_m"] + 2 * INCH}),
        *hole_cases("radial tube 50 mm, level, in a 9 in bore", **STRAIGHT, **tube(0.025, 0.0, 0.0, 0.06)),
        *hole_cases("tube 40 mm half way out in a 9/11 in cone, rising 15°", **CONE, **tube(0.02, 0.06, 15 * pi / 180, 0.08)),
    ],
)
