"""Volumes of round bodies by adding up slices numerically: no closed formula of a solid is used."""

from math import pi, sqrt

from scipy.integrate import quad

from _report import case, report

INCH = 0.0254
WHY = "an integral of a smooth curve: only rounding may differ"
SHARE = 1e-9


def integral(f, low, high):
    value, _ = quad(f, low, high, epsabs=0, epsrel=1e-12)
    return value


def frustum(lower_radius_m, upper_radius_m, height_m):
    slope = (upper_radius_m - lower_radius_m) / height_m
    return integral(lambda z: pi * (lower_radius_m + slope * z) ** 2, 0, height_m)


def ring(outer_radius_m, inner_radius_m, height_m):
    return integral(lambda r: 2 * pi * r * height_m, inner_radius_m, outer_radius_m)


def dish(rim_radius_m, depth_m):
    """A part of a ball, `depth_m` deep: shells from the axis out to the rim."""
    ball = (rim_radius_m**2 + depth_m**2) / (2 * depth_m)
    rim = ball - depth_m
    if rim >= 0:
        return integral(lambda r: 2 * pi * r * (sqrt(ball**2 - r**2) - rim), 0, rim_radius_m)
    return integral(lambda z: pi * (ball**2 - z**2), rim, ball)


def one(id, shape, volume, **inputs):
    expected = volume(**inputs)
    return case(id, {"shape": shape, **inputs}, expected, expected * SHARE, WHY)


def f(id, lower, upper, height):
    return one(id, "frustum", frustum, lower_radius_m=lower, upper_radius_m=upper, height_m=height)


def r(id, outer, inner, height):
    return one(id, "ring", ring, outer_radius_m=outer, inner_radius_m=inner, height_m=height)


def d(id, rim, depth):
    return one(id, "dish", dish, rim_radius_m=rim, depth_m=depth)


def lined_pot():
    """Outside 14 in across at the bottom, 16 in at the top, 19 in tall; wall 1.5 in level, floor 2 in."""
    outer = {"lower_radius_m": 7 * INCH, "upper_radius_m": 8 * INCH, "height_m": 19 * INCH}
    at_floor = 7 + 2 / 19
    inner = {
        "lower_radius_m": (at_floor - 1.5) * INCH,
        "upper_radius_m": (8 - 1.5) * INCH,
        "height_m": 17 * INCH,
    }

    def solid_slice(z):
        radius = (7 + z / 19) * INCH
        return pi * (radius**2 - (radius - 1.5 * INCH) ** 2)

    floor = integral(lambda z: pi * ((7 + z / 19) * INCH) ** 2 * INCH, 0, 2)
    wall = integral(lambda z: solid_slice(z) * INCH, 2, 19)
    expected = floor + wall
    inputs = {"shape": "frustum less frustum", "outer": outer, "inner": inner}
    return case("pot 14/16 × 19 in, wall 1.5, floor 2", inputs, expected, expected * SHARE, WHY)


report(
    ["scipy"],
    [
        f("pot 14/16 × 19 in, outside", 7 * INCH, 8 * INCH, 19 * INCH),
        lined_pot(),
        f("lid 16 × 2 in", 8 * INCH, 8 * INCH, 2 * INCH),
        f("bucket 0.10/0.13 × 0.25 m", 0.10, 0.13, 0.25),
        f("plug wider below 0.08/0.05 × 0.10 m", 0.08, 0.05, 0.10),
        f("cone 0 to 0.15 × 0.30 m", 0.0, 0.15, 0.30),
        f("drum 0.285 × 0.88 m", 0.285, 0.285, 0.88),
        r("ring 20/14 × 12 in", 10 * INCH, 7 * INCH, 12 * INCH),
        r("thin ring 0.150/0.145 × 0.4 m", 0.150, 0.145, 0.4),
        r("lid with a 4 in hole, 16 × 2 in", 8 * INCH, 2 * INCH, 2 * INCH),
        d("shallow dish 0.20 rim, 0.03 deep", 0.20, 0.03),
        d("half ball 0.15", 0.15, 0.15),
        d("dish 6 in rim, 4 in deep", 6 * INCH, 4 * INCH),
        d("dish deeper than half a ball: 0.10 rim, 0.14 deep", 0.10, 0.14),
    ],
)
