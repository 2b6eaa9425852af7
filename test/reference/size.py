"""Volumes, tangents, plan lengths, spills and sleeves of furnaces, found numerically: slices, polygons, roots of
distances. No closed formula of the project is used."""

from math import cos, hypot, pi, sin

from scipy.integrate import quad
from scipy.optimize import brentq
from shapely.geometry import LineString, Point

from _report import case, report

INCH = 0.0254
SLICES = "an integral of a smooth curve: only rounding may differ"
ROOT = "a root found to 1e-13 m: only rounding may differ"
POLYGON = "circles stand as polygons of 4 × 4096 sides: their sagitta is below 3e-8 of the radius"


def integral(f, low, high):
    value, _ = quad(f, low, high, epsabs=0, epsrel=1e-12, limit=200)
    return value


def line(z, z0, r0, z1, r1):
    return r0 + (r1 - r0) * (z - z0) / (z1 - z0)


def tapered_ring(id, bore_bottom, bore_top, height, wall):
    """Wall of one thickness, square to the axis, round a room that widens."""

    def slice_m2(z):
        r = line(z, 0, bore_bottom, height, bore_top)
        return pi * ((r + wall) ** 2 - r**2)

    v = integral(slice_m2, 0, height)
    inputs = {"of": "wall", "bore_bottom_m": bore_bottom, "bore_top_m": bore_top, "height_m": height, "wall_m": wall}
    return case(id, inputs, v, v * 1e-9, SLICES)


def insulation(id, vessel_bottom, vessel_top, vessel_height, lining_bottom, lining_top, top):
    """Between a vessel and a lining that stands on bricks as wide as its foot, from the vessel's bottom to `top`."""

    def slice_m2(z):
        outer = line(z, 0, vessel_bottom, vessel_height, vessel_top)
        inner = lining_bottom["r"] if z < lining_bottom["z"] else line(z, lining_bottom["z"], lining_bottom["r"], top, lining_top)
        return pi * (outer**2 - inner**2)

    v = integral(slice_m2, 0, lining_bottom["z"]) + integral(slice_m2, lining_bottom["z"], top)
    inputs = {
        "of": "insulation",
        "vessel_bottom_m": vessel_bottom,
        "vessel_top_m": vessel_top,
        "vessel_height_m": vessel_height,
        "foot_m": lining_bottom["r"],
        "foot_height_m": lining_bottom["z"],
        "rim_m": lining_top,
        "rim_height_m": top,
    }
    return case(id, inputs, v, v * 1e-9, SLICES)


def tangency(id, bore, tube):
    """The offset at which a strip as wide as the tube just stays inside the circle, by halving; then the plan length."""
    disk = Point(0, 0).buffer(bore, quad_segs=4096)
    low, high = 0.0, bore
    for _ in range(60):
        middle = (low + high) / 2
        edge = LineString([(-2 * bore, middle + tube / 2), (2 * bore, middle + tube / 2)])
        if edge.intersects(disk):
            low = middle
        else:
            high = middle
    return case(id, {"of": "offset", "bore_m": bore, "tube_m": tube}, low, bore * 1e-7, POLYGON)


def plan_length(id, inner, outer, offset):
    """How much of a straight line lies between two circles, on one side: cut by polygons."""
    ring = Point(0, 0).buffer(outer, quad_segs=4096).difference(Point(0, 0).buffer(inner, quad_segs=4096))
    axis = LineString([(0, offset), (2 * outer, offset)])
    inputs = {"of": "plan length", "inner_m": inner, "outer_m": outer, "offset_m": offset}
    # Aslant, the sagitta is stretched by radius over half chord: under 3 here.
    return case(id, inputs, axis.intersection(ring).length, 3e-7 * outer, POLYGON)


def spill(id, volume, bore, plinth, plinth_height):
    """Fill the bore slice by slice until the volume is used up."""

    def filled(depth):
        below = integral(lambda z: pi * (bore**2 - plinth**2), 0, min(depth, plinth_height)) if plinth_height > 0 else 0
        above = integral(lambda z: pi * bore**2, plinth_height, depth) if depth > plinth_height else 0
        return below + above

    depth = brentq(lambda d: filled(d) - volume, 1e-9, 1, xtol=1e-14)
    inputs = {
        "of": "spill",
        "volume_m3": volume,
        "bore_m": bore,
        "plinth_m": plinth,
        "plinth_height_m": plinth_height,
    }
    return case(id, inputs, depth, 1e-10, ROOT)


def saddle(id, angle, tube, offset, tilt, cylinder):
    """Walk along one line of a tilted tube until it is as far from the upright axis as the cylinder."""

    def out(s):
        aside = offset + tube * sin(angle)
        up = -tube * cos(angle)
        x = s * cos(tilt) - up * sin(tilt)
        return hypot(x, aside) - cylinder

    s = brentq(out, 0, 3 * cylinder, xtol=1e-14)
    inputs = {
        "of": "saddle",
        "angle_rad": angle,
        "tube_radius_m": tube,
        "offset_m": offset,
        "tilt_rad": tilt,
        "cylinder_radius_m": cylinder,
    }
    return case(id, inputs, s, 1e-10, ROOT)


def slot(id, bore, tube):
    """Arc of the bore inside a tangent tube's strip: lengths of small chords, summed."""
    disk_edge = Point(0, 0).buffer(bore, quad_segs=4096).exterior
    coords = list(disk_edge.coords)
    offset = bore - tube
    total = 0.0
    for (x0, y0), (x1, y1) in zip(coords, coords[1:]):
        if (x0 + x1) / 2 > 0 and (y0 + y1) / 2 > offset - tube:
            total += hypot(x1 - x0, y1 - y0)
    chord = 2 * pi * bore / len(coords)
    inputs = {"of": "slot", "bore_m": bore, "tube_m": tube}
    return case(id, inputs, total, 2 * chord, "the arc is counted in whole sides of the polygon: one at each end")


def hot_gas(id, rate, flue):
    """Propane burned without excess air, counted in moles: C3H8 + 5 O2 gives 3 CO2 + 4 H2O, with 18.86 N2 and Ar."""
    moles = 3 + 4 + 5 / 0.2095 * 0.7905
    per_joule = moles / (0.0440956 * 46.3e6)
    volume = rate * per_joule * 8.314462618 * flue / 101325
    return case(
        id,
        {"of": "hot gas", "rate_W": rate, "flue_K": flue},
        volume,
        0.02 * volume,
        "ours is from masses rounded to three digits: 1 to 2 %",
    )


report(
    ["scipy", "shapely"],
    [
        tapered_ring("wall 1.5 in round 11/13 in, 17 in high", 5.5 * INCH, 6.5 * INCH, 17 * INCH, 1.5 * INCH),
        tapered_ring("straight wall 40 mm round 232 mm", 0.116, 0.116, 0.313, 0.04),
        insulation("31 gal can, pot 14/16 in", 9 * INCH, 10.25 * INCH, 24.75 * INCH, {"r": 7 * INCH, "z": 2.25 * INCH}, 8 * INCH, 21.25 * INCH),
        insulation("straight pot in a tapered can", 0.1937, 0.2222, 0.5588, {"r": 0.156, "z": 0.064}, 0.156, 0.427),
        tangency("offset of a 40 mm tube in a 232 mm bore", 0.116, 0.04),
        tangency("offset of a 1 in tube in a 11 in bore", 5.5 * INCH, INCH),
        plan_length("through 40 mm of lining, tangent", 0.116, 0.156, 0.096),
        plan_length("to the outside, tangent", 0.116, 0.2, 0.096),
        plan_length("radial", 0.116, 0.2, 0.0),
        spill("1.6 L round a low plinth", 0.0016, 0.116, 0.057, 0.06),
        spill("3 L over a low plinth", 0.003, 0.116, 0.057, 0.06),
        spill("2 L on a flat floor", 0.002, 0.15, 0.0, 0.0),
        saddle("sleeve, lowest line on the lining", 0.0, 0.023, 0.096, 0.23, 0.156),
        saddle("sleeve, near side on the vessel", pi / 2, 0.023, 0.096, 0.23, 0.2),
        saddle("sleeve, top line on the vessel", pi, 0.023, 0.096, 0.23, 0.2),
        saddle("sleeve, far side, level", 3 * pi / 2, 0.023, 0.096, 0.0, 0.2),
        slot("slot of a 40 mm tube in a 232 mm bore", 0.116, 0.02),
        hot_gas("hot gas of 15 kW propane at 950 °C", 15e3, 1223.15),
        hot_gas("hot gas of 30 kW propane at 1200 °C", 30e3, 1473.15),
    ],
)
