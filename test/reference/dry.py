"""Drying: steam and wet bulbs by CoolProp, a drying sheet by finite volumes in time, exchange of a face by ht."""

from math import pi

import CoolProp.CoolProp as CP
import numpy as np
from CoolProp.HumidAirProp import HAPropsSI
from ht import Nu_cylinder_Churchill_Bernstein, Nu_vertical_plate_Churchill
from scipy.linalg import eigh_tridiagonal
from scipy.optimize import brentq

from _report import case, report

ZERO_C = 273.15
NORMAL_PA = 101_325
DAY = 86_400


def steam():
    for celsius in (0.01, 10, 20, 50, 80, 100, 110, 120, 150, 180, 200, 212, 234, 264, 300, 350):
        temperature = celsius + ZERO_C
        pressure = CP.PropsSI("P", "T", temperature, "Q", 1, "Water")
        why = "0.05 %: the industrial formulation is fitted to the reference equation to 0.03 %"
        yield case(f"steam pressure at {celsius} °C, Pa", {"water_K": temperature}, pressure, 5e-4 * pressure, why)


def wet_bulbs():
    why = "9 % of the depression: the wet bulb is that of a Lewis number of 1; vapour in air has 0.87, and 0.87^⅔ is 0.91"
    for celsius, humidity in ((10, 0.3), (10, 0.7), (20, 0.2), (20, 0.5), (20, 0.8), (30, 0.3), (30, 0.6), (40, 0.4)):
        air = celsius + ZERO_C
        bulb = HAPropsSI("B", "T", air, "P", NORMAL_PA, "R", humidity)
        inputs = {"air_K": air, "humidity": humidity}
        yield case(f"wet bulb in {celsius} °C and {humidity:.0%}, K", inputs, bulb, 0.09 * (air - bulb), why)


class Slab:
    """Unit half thickness, sealed at 0, losing biot × what it holds at 1: finite volumes, exact in time by their modes."""

    CELLS = 400

    def __init__(self, biot):
        n = self.CELLS
        h = 1 / n
        # The outer half cell stands in series with the face.
        face = 1 / (h / 2 + 1 / biot)
        diagonal = np.full(n, 2 / h**2)
        diagonal[0] = 1 / h**2
        diagonal[-1] = 1 / h**2 + face / h
        self.values, vectors = eigh_tridiagonal(diagonal, np.full(n - 1, -1 / h**2))
        self.weights = (vectors.sum(axis=0) ** 2) * h

    def left(self, fourier):
        return float(np.sum(self.weights * np.exp(-self.values * fourier)))

    def rate(self, fourier):
        return float(np.sum(self.weights * self.values * np.exp(-self.values * fourier)))


def sheets():
    why = "1e-4: 400 cells are second-order exact, some 1e-6 but for the first instants of a large Biot number"
    for biot in (0.1, 0.5, 2, 10, 100):
        slab = Slab(biot)
        for fourier in (0.01, 0.1, 0.5, 1, 3):
            inputs = {"biot": biot, "fourier": fourier}
            yield case(f"sheet, Bi {biot}, Fo {fourier}: left", inputs, slab.left(fourier), 1e-4, why)


def linings():
    """The whole way in SI: water that can leave, loss of a wet open face, thickness, diffusivity; days until air-dry."""
    rows = (
        ("25 mm, one side", 0.025, 1, 2e-9, 0.055, 1.5e-5),
        ("38 mm, one side", 0.0381, 1, 2e-9, 0.055, 8e-6),
        ("38 mm, both sides", 0.0381, 2, 2e-9, 0.055, 8e-6),
        ("38 mm, tight", 0.0381, 1, 0.5e-9, 0.055, 1.5e-5),
        ("75 mm, one side", 0.075, 1, 4e-9, 0.08, 2e-5),
    )
    density, left_wanted, loss_wanted = 1850, 0.01, 0.005 / DAY
    for name, thickness, sides, diffusivity, share, loss in rows:
        half = thickness / sides
        free = density * thickness * share
        # d(mean)/dt of the share left = −(flux over both faces) ÷ free; the face's coefficient by its first loss.
        alpha = loss / (density * share)
        slab = Slab(alpha * half / diffusivity)
        unit = half**2 / diffusivity

        def wet(t):
            return max(share * slab.left(t / unit) / left_wanted, share * slab.rate(t / unit) / unit / loss_wanted) - 1

        days = brentq(wet, DAY / 50, 3000 * DAY, xtol=1e-6, rtol=1e-13) / DAY
        inputs = {
            "thickness_m": thickness,
            "open_sides": sides,
            "diffusivity_m2_s": diffusivity,
            "dry_kg_m2": density * thickness,
            "free_kg_m2": free,
            "loss_of_a_face_kg_m2s": loss,
        }
        yield case(f"air-dry: {name}, days", inputs, days, 1e-3 * days, "0.1 %: both solve one equation, ours by a series")


def exchange():
    """Convection of a cylinder 0.35 m across in wind, and of an upright face 0.3 m high, 4 K from still air."""
    across, high, air = 0.35, 0.3, 20 + ZERO_C
    viscosity = CP.PropsSI("V", "T", air, "P", NORMAL_PA, "Air") / CP.PropsSI("D", "T", air, "P", NORMAL_PA, "Air")
    conductivity = CP.PropsSI("L", "T", air, "P", NORMAL_PA, "Air")
    prandtl = CP.PropsSI("PRANDTL", "T", air, "P", NORMAL_PA, "Air")
    for name, speed, share in (("calm", 0.3, 0.5), ("breezy", 3, 0.35), ("windy", 6, 0.35)):
        nusselt = Nu_cylinder_Churchill_Bernstein(Re=speed * across / viscosity, Pr=prandtl)
        value = nusselt * conductivity / across
        why = f"{share:.0%}: one shape at one speed stands for a word of wind; the range of the word is wider"
        yield case(f"exchange, {name}, W/(m² K)", {"wind": name}, value, share * value, why)
    grashof = 9.80665 * 4 / air * high**3 / viscosity**2
    value = Nu_vertical_plate_Churchill(Pr=prandtl, Gr=grashof) * conductivity / high
    yield case("exchange, indoors, W/(m² K)", {"wind": "indoors"}, value, 0.35 * value, "35 %: the difference of 4 K is judged")


assert abs(Slab(1e9).left(0.0) - 1) < 1e-9 and abs(Slab(1e9).left(1.0) - 8 / pi**2 * np.exp(-(pi**2) / 4)) < 1e-4
report(["CoolProp", "scipy", "numpy", "ht"], [*steam(), *wet_bulbs(), *sheets(), *linings(), *exchange()])
