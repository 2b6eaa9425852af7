"""Air through pipes and beds, gas jets, propane and cylinders, by fluids, CoolProp and scipy."""

from math import pi, sqrt

import cantera as ct
import CoolProp.CoolProp as CP
import numpy as np
from fluids import ATMOSPHERE_1976, P_critical_flow, is_critical_flow
from fluids.fittings import (
    Hooper2K,
    K_ball_valve_Crane,
    K_butterfly_valve_Crane,
    K_gate_valve_Crane,
    bend_miter,
    bend_rounded,
    contraction_sharp,
    entrance_sharp,
)
from fluids.friction import Colebrook
from fluids.packed_bed import Ergun
from fluids.safety_valve import API520_A_g
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar

from _report import case, report

ZERO_C = 273.15
NORMAL_PA = 101_325
R = 8.314462618
SAME_EQUATION = "the same equation solved another way: only rounding may differ"


def one(subject, quantity, unit, inputs, expected, share, why):
    return case(f"{subject}: {quantity}, {unit}", {"kind": quantity, **inputs}, expected, abs(expected) * share, why)


def friction(reynolds, roughness):
    return 64 / reynolds if reynolds < 2040 else Colebrook(reynolds, roughness)


def frictions():
    for reynolds in (500, 1900, 4000, 1e4, 1e5, 1e6, 1e8):
        for roughness in (0.0, 1e-4, 0.01, 0.05):
            if reynolds < 2040 and roughness > 0:
                continue
            inputs = {"reynolds": reynolds, "roughness": roughness}
            yield one(
                f"Re {reynolds:g}, ε/D {roughness:g}",
                "friction factor",
                "1",
                inputs,
                friction(reynolds, roughness),
                1e-8,
                SAME_EQUATION,
            )


def drop(flow, bore, length, rough, losses, density, viscosity):
    velocity = flow / (pi / 4 * bore**2)
    reynolds = density * velocity * bore / viscosity
    return (friction(reynolds, rough / bore) * length / bore + losses) * density * velocity**2 / 2


def pipes():
    density = CP.PropsSI("D", "T", 293.15, "P", NORMAL_PA, "Air")
    viscosity = CP.PropsSI("V", "T", 293.15, "P", NORMAL_PA, "Air")
    for bore in (0.025, 0.032, 0.038, 0.076):
        inputs = {
            "flow_m3_s": 0.02,
            "bore_m": bore,
            "length_m": 1.5,
            "roughness_m": 4.5e-5,
            "losses": 2,
            "density_kg_m3": density,
            "viscosity_Pa_s": viscosity,
            "pressure_Pa": NORMAL_PA,
        }
        expected = drop(0.02, bore, 1.5, 4.5e-5, 2, density, viscosity)
        yield one(f"20 L/s, 1.5 m of {bore * 1000:g} mm", "pipe drop", "Pa", inputs, expected, 1e-8, SAME_EQUATION)


def losses():
    for ratio in (0.1, 0.25, 0.5, 0.9):
        expected = contraction_sharp(Di1=1, Di2=sqrt(ratio), method="Rennels")
        yield one(
            f"area ratio {ratio}", "contraction loss", "1", {"area_ratio": ratio}, expected, 1e-9, SAME_EQUATION
        )
    why = "the range this kind of fitting is kept with: books differ by that much"
    kept = {
        "sharp entrance": [entrance_sharp(), entrance_sharp(method="Miller")],
        "long bend": [
            bend_rounded(Di=0.05, angle=90, fd=0.02, bend_diameters=1.5, Re=1e5, method=name)
            for name in ("Rennels", "Crane", "Miller")
        ],
        "mitre elbow": [bend_miter(angle=90, Di=0.05, Re=1e5, method=name) for name in ("Rennels", "Crane", "Miller")],
        "threaded elbow": [Hooper2K(Di=1.5, Re=5e4, K1=800, Kinfty=0.4)],
        "ball valve, open": [K_ball_valve_Crane(D1=0.041, D2=0.041, angle=0)],
        "gate valve, open": [K_gate_valve_Crane(D1=0.041, D2=0.041, angle=0)],
        "butterfly, open": [K_butterfly_valve_Crane(D=0.05, style=0)],
    }
    for fitting, values in kept.items():
        for at, value in enumerate(values):
            yield one(f"{fitting} {at + 1}", "loss of a fitting", "1", {"fitting": fitting}, value, 0, why)


def ergun():
    rows = [
        ("library's own example", 0.0008, 0.4, 0.001, 1000.0, 1e-3, 1.0),
        ("charcoal, 21 mm, hot", 0.021, 0.5, 1.0, 0.25, 5.2e-5, 0.3),
        ("fines, 5 mm, hot", 0.005, 0.42, 0.6, 0.22, 5.5e-5, 0.2),
    ]
    for name, size, void, velocity, density, viscosity, depth in rows:
        expected = Ergun(dp=size, voidage=void, vs=velocity, rho=density, mu=viscosity, L=depth)
        inputs = {
            "lump_m": size,
            "void_share": void,
            "velocity_m_s": velocity,
            "density_kg_m3": density,
            "viscosity_Pa_s": viscosity,
            "depth_m": depth,
            "sphericity": 1,
            "roughness_factor": 1,
        }
        yield one(name, "bed drop", "Pa", inputs, expected, 1e-9, SAME_EQUATION)


def airs():
    for altitude in (0, 500, 1500, 3000, 5000):
        air = ATMOSPHERE_1976(altitude)
        why = "the library takes geometric height and lets gravity fall with it: 4 m in 5000"
        for quantity, value in (("standard pressure", air.P), ("standard density", air.rho)):
            unit = "Pa" if quantity.endswith("pressure") else "kg/m³"
            yield one(f"{altitude} m", quantity, unit, {"altitude_m": altitude}, value, 6e-4, why)
    for celsius in (-15, 0, 10, 25, 40, 50):
        T = celsius + ZERO_C
        expected = CP.HAPropsSI("P_w", "T", T, "R", 1, "P", NORMAL_PA)
        why = "0.8 %: Magnus leaves out what air adds to the vapour's pressure (0.4 %)"
        yield one(f"{celsius} °C", "saturated vapour", "Pa", {"air_K": T}, expected, 0.008, why)
        for humidity in (0, 0.5, 1):
            for pressure in (70e3, NORMAL_PA):
                inputs = {"air_K": T, "pressure_Pa": pressure, "humidity": humidity}
                subject = f"{celsius} °C, {humidity * 100:g} % humid, {pressure / 1000:g} kPa"
                why = "0.15 %: air as an ideal gas, and the vapour's 0.8 % of at most an eighth of the pressure"
                for quantity, symbol in (("humid air", "Vha"), ("dry part of humid air", "Vda")):
                    volume = CP.HAPropsSI(symbol, "T", T, "R", humidity, "P", pressure)
                    share = 1.5e-3 if quantity == "humid air" else 2.5e-3
                    yield one(subject, quantity, "kg/m³", inputs, 1 / volume, share, why)
    for T in (253.15, 293.15, 600, 1000, 1400, 1800):
        expected = CP.PropsSI("V", "T", T, "P", NORMAL_PA, "Air")
        why = "2.7 %: two constants over 1550 K"
        yield one(f"{T:g} K", "viscosity of air", "Pa s", {"air_K": T}, expected, 0.027, why)


def ideal_flux(upstream, downstream, T, k, molar_mass, Z):
    """Greatest flux over every pressure the throat could have: choking is found, not assumed. kg/(s m²)."""
    specific = Z * R / molar_mass

    def flux(throat):
        r = throat / upstream
        exit_T = T * r ** ((k - 1) / k)
        velocity = sqrt(max(0.0, 2 * k / (k - 1) * specific * (T - exit_T)))
        return velocity * throat / (specific * exit_T)

    best = minimize_scalar(
        lambda p: -flux(p), bounds=(max(downstream, 0.3 * upstream), upstream), method="bounded", options={"xatol": 1e-6}
    )
    return max(-best.fun, flux(max(downstream, 0.3 * upstream)))


def real_flux(upstream, downstream, T):
    """The same for propane as CoolProp knows it, along its isentrope."""
    s = CP.PropsSI("S", "P", upstream, "T", T, "Propane")
    h = CP.PropsSI("H", "P", upstream, "T", T, "Propane")

    def flux(throat):
        fallen = h - CP.PropsSI("H", "P", throat, "S", s, "Propane")
        return sqrt(max(0.0, 2 * fallen)) * CP.PropsSI("D", "P", throat, "S", s, "Propane")

    best = minimize_scalar(lambda p: -flux(p), bounds=(downstream, upstream), method="bounded")
    return max(-best.fun, flux(downstream))


def jets():
    for k in (1.08, 1.135, 1.289, 1.4, 1.667):
        expected = P_critical_flow(P=1e6, k=k) / 1e6
        yield one(f"k {k}", "critical ratio", "1", {"k": k}, expected, 1e-9, SAME_EQUATION)
    area = pi / 4 * 0.0008**2
    for gauge in (2.75e3, 30e3, 70e3, 80e3, 200e3, 400e3):
        inputs = {
            "jet_bore_m": 0.0008,
            "upstream_Pa": NORMAL_PA + gauge,
            "downstream_Pa": NORMAL_PA,
            "discharge": 0.83,
            "gas_K": 293.15,
            "k": 1.135,
            "molar_mass_kg_mol": 0.044096,
            "compressibility": 1,
        }
        flux = ideal_flux(NORMAL_PA + gauge, NORMAL_PA, 293.15, 1.135, 0.044096, 1)
        subject = f"propane, 0.8 mm, {gauge / 1000:g} kPa gauge"
        why = "the same gas, the throat found by search: flat at its greatest value, so 1e-6 is what a search gives"
        yield one(subject, "jet flow", "kg/s", inputs, 0.83 * area * flux, 1e-6, why)
        choked = is_critical_flow(P1=NORMAL_PA + gauge, P2=NORMAL_PA, k=1.135)
        yield case(f"{subject}: choked or not", {"kind": "choked", **inputs}, int(choked), 0, "a yes or a no")
        if gauge <= 200e3:
            flux = real_flux(NORMAL_PA + gauge, NORMAL_PA, 293.15)
            why = "3 %: real propane flows 1 to 3 % more than an ideal gas"
            yield one(f"{subject}, real gas", "jet flow", "kg/s", inputs, 0.83 * area * flux, 0.03, why)
    for name, back, kb in (("choked", None, 1), ("not choked", 532e3, None)):
        m = 24270 / 3600
        if back is None:
            expected = API520_A_g(m=m, T=348, Z=0.9, MW=51, k=1.11, P1=670e3, P2=101e3, Kd=0.975, Kb=kb, Kc=1)
        else:
            expected = API520_A_g(m=m, T=348, Z=0.9, MW=51, k=1.11, P1=670e3, P2=back, Kd=0.975, Kb=1, Kc=1)
        inputs = {
            "flow_kg_s": m,
            "upstream_Pa": 670e3,
            "downstream_Pa": back or 101e3,
            "discharge": 0.975,
            "gas_K": 348,
            "k": 1.11,
            "molar_mass_kg_mol": 0.051,
            "compressibility": 0.9,
        }
        why = "0.1 %: the standard's constants are rounded to four figures"
        yield one(f"API 520, {name}", "jet area", "m²", inputs, expected, 1e-3, why)


def propane():
    for celsius in range(-50, 51, 10):
        T = celsius + ZERO_C
        p = CP.PropsSI("P", "T", T, "Q", 1, "Propane")
        gas, liquid = (CP.PropsSI("H", "T", T, "Q", q, "Propane") for q in (1, 0))
        fit = "the error that the fit states"
        inputs = {"liquid_K": T}
        yield one(f"{celsius} °C", "vapour pressure", "Pa", inputs, p, 0.0031, fit)
        yield one(f"{celsius} °C", "heat to evaporate", "J/kg", inputs, gas - liquid, 0.006, fit)
        yield one(f"{celsius} °C", "liquid density", "kg/m³", inputs, CP.PropsSI("D", "T", T, "Q", 0, "Propane"), 0.0014, fit)
        yield one(
            f"{celsius} °C", "liquid heat capacity", "J/(kg K)", inputs, CP.PropsSI("C", "T", T, "Q", 0, "Propane"), 0.004, fit
        )
    for kilopascal in (101.325, 200, 301.325, 500, 1000):
        expected = CP.PropsSI("T", "P", kilopascal * 1000, "Q", 0, "Propane")
        yield case(
            f"{kilopascal:g} kPa: boiling point, K",
            {"kind": "boiling point", "pressure_Pa": kilopascal * 1000},
            expected,
            0.12,
            "0.12 K: 0.31 % of pressure on the flattest part of the line",
        )
    cp, cv = (CP.PropsSI(name, "T", 293.15, "P", 1000, "Propane") for name in ("C", "O"))
    yield one("20 °C", "ratio of heat capacities", "1", {}, cp / cv, 0.005, "1.13 to 1.15 by temperature; taken once")


def tabled(output, quality):
    kelvins = np.linspace(222, 324, 300)
    values = [CP.PropsSI(output, "T", T, "Q", quality, "Propane") for T in kelvins]
    return lambda T: float(np.interp(T, kelvins, values))


def cylinders():
    gas, liquid = tabled("H", 1), tabled("H", 0)
    density, capacity, pressure = tabled("D", 0), tabled("C", 0), tabled("P", 0)
    latent = lambda T: gas(T) - liquid(T)
    wetted = lambda m, T, radius: pi * radius**2 + 2 * m / (density(T) * radius)
    runs = [
        ("9 kg, 20 °C, 2.5 kg/h, 200 kPa", 0.153, 9, 293.15, 301_325, 11, 2.5),
        ("9 kg, 5 °C, 2 kg/h, 100 kPa", 0.153, 9, 278.15, 201_325, 8, 2.0),
        ("4 kg, 25 °C, 4 kg/h, 150 kPa", 0.153, 4, 298.15, 251_325, 15, 4.0),
        ("45 kg, −10 °C, 5 kg/h, 50 kPa", 0.1875, 45, 263.15, 151_325, 11, 5.0),
    ]
    for name, radius, fill, ambient, needed, exchange, per_hour in runs:
        draw = per_hour / 3600

        def rate(t, y):
            T, m = y
            heat = exchange * wetted(m, T, radius) * (ambient - T) - draw * latent(T)
            return [heat / (m * capacity(T)), -draw]

        def failing(t, y):
            return pressure(y[0]) - needed

        failing.terminal = True
        run = solve_ivp(rate, (0, 0.9 * fill / draw), [ambient, fill], events=failing, rtol=1e-8, atol=1e-6)
        inputs = {
            "radius_m": radius,
            "liquid_kg": fill,
            "ambient_K": ambient,
            "needed_Pa": needed,
            "exchange_W_m2K": exchange,
            "pressure_factor": 1,
            "draw_kg_s": draw,
            "usable_share": 0.9,
        }
        why = "1.5 %: our heat to evaporate is within 0.6 %, pressure within 0.31 %, and near the end cooling is slow"
        yield one(name, "time to too cold", "s", inputs, float(run.t_events[0][0]), 0.015, why)
        T = brentq(lambda T: pressure(T) - needed, 223, 322)
        steady = exchange * wetted(fill, T, radius) * (ambient - T) / latent(T)
        why = "2 %: 0.12 K of some 10 to 25 K between air and liquid, and 0.6 % of the heat to evaporate"
        yield one(name, "steady draw", "kg/s", inputs, steady, 0.02, why)
    for celsius in (0, 10, 20):
        share = []
        for needed in (NORMAL_PA + 200e3, NORMAL_PA):
            T = brentq(lambda T: pressure(T) - needed, 223, 322)
            share.append(wetted(45.36, T, 0.1875) * (celsius + ZERO_C - T) / latent(T))
        inputs = {"ambient_K": celsius + ZERO_C}
        why = "2 %: as the steady draw"
        yield one(f"{celsius} °C", "share of the draw to no pressure left at 200 kPa", "1", inputs, share[0] / share[1], 0.02, why)


def blasts():
    density = CP.PropsSI("D", "T", 293.15, "P", NORMAL_PA, "Air")
    viscosity = CP.PropsSI("V", "T", 293.15, "P", NORMAL_PA, "Air")
    hot_viscosity = CP.PropsSI("V", "T", 1400, "P", NORMAL_PA, "Air")
    runs = [
        ("hair dryer, 32 mm", 0.02, 350, 0.032),
        ("hair dryer, 50 mm", 0.02, 350, 0.05),
        ("inflator, 25 mm", 0.009, 3500, 0.025),
        ("forge blower, 50 mm", 0.06, 600, 0.05),
    ]
    for name, free, shut, bore in runs:

        def missing(flow):
            fan = shut * density / 1.2 * (1 - (flow / free) ** 2)
            hot = flow * 1400 / 293.15 / (pi / 4 * 0.3**2)
            bed = 1.2 * Ergun(
                dp=0.7 * 0.03, voidage=0.5, vs=hot, rho=density * 293.15 / 1400, mu=hot_viscosity, L=0.25
            )
            pipe = drop(flow, bore, 0.9, 4.5e-5, 0.5, density, viscosity)
            tuyere = density / 2 * (flow / (pi / 4 * bore**2)) ** 2
            return fan - bed - pipe - tuyere

        inputs = {
            "fan": {"free_flow_m3_s": free, "shut_off_Pa": shut, "rated_density_kg_m3": 1.2},
            "speed": 1,
            "pipe": {"bore_m": bore, "length_m": 0.9, "roughness_m": 4.5e-5, "losses": 0.5},
            "tuyere": {"bore_m": bore, "losses": 1},
            "bed": {
                "bore_m": 0.3,
                "depth_m": 0.25,
                "lump_m": 0.03,
                "sphericity": 0.7,
                "void_share": 0.5,
                "roughness_factor": 1.2,
                "bed_K": 1400,
            },
            "back_pressure_Pa": 0,
            "air_K": 293.15,
            "pressure_Pa": NORMAL_PA,
            "density_kg_m3": density,
            "dry_density_kg_m3": density,
            "viscosity_Pa_s": viscosity,
        }
        flow = brentq(missing, 1e-3 * free, free, xtol=1e-14)
        why = "0.1 %: only the hot gas's viscosity differs (2.6 %), on a small part of the bed's drop"
        yield one(name, "blast", "m³/s", inputs, flow, 1e-3, why)


def beds():
    """Free energies of the three species, and the balance found by search; no constant of ours is used."""
    gases = {s.name: s.thermo for s in ct.Species.list_from_file("nasa_gas.yaml") if s.name in ("CO", "CO2")}
    graphite = next(s.thermo for s in ct.Species.list_from_file("nasa_condensed.yaml") if s.name == "C(gr)")

    def free(species, T):
        return species.h(T) - T * species.s(T)

    for celsius in (500, 600, 650, 700, 800, 900, 1100, 1400):
        T = celsius + ZERO_C
        K = np.exp(-(2 * free(gases["CO"], T) - free(gases["CO2"], T) - free(graphite, T)) / (ct.gas_constant * T))
        for name, inert in (("oxygen", 0.0), ("air", 0.7905 / 0.2095)):

            def missing(b):
                return b**2 - K * (1 - b / 2) * (1 + b / 2 + inert)

            CO = brentq(missing, 0, 2, xtol=1e-14)
            inputs = {"bed_K": T, "pressure_Pa": NORMAL_PA, "inert_per_oxygen": inert}
            why = "0.7 %: what the line misses of K, which the share never exceeds"
            yield one(f"carbon and {name}, {celsius} °C", "share as CO", "1", inputs, CO / (1 + CO / 2), 0.007, why)


def tubes():
    for name, bore, gas, thrust, back in (
        ("22 mm", 0.022, 2.4e-4, 0.075, 0),
        ("22 mm against 30 Pa", 0.022, 2.4e-4, 0.075, 30),
        ("40 mm", 0.04, 5e-4, 0.2, 5),
    ):
        area = pi / 4 * bore**2
        rho_gas, rho_air, inlet = 1.83, 1.2, 2 * area

        def missing(r):
            mixed = (1 + r) / (1 / rho_gas + r / rho_air)
            out = (gas * (1 + r)) ** 2 / (mixed * area) * 1.25
            into = 0.5 * 1.5 * (gas * r) ** 2 * area / (rho_air * inlet**2)
            return out + into + back * area - thrust

        inputs = {
            "gas_kg_s": gas,
            "thrust_N": thrust,
            "tube_bore_m": bore,
            "inlet_m2": inlet,
            "gas_density_kg_m3": rho_gas,
            "air_density_kg_m3": rho_air,
            "tube_losses": 0.5,
            "inlet_losses": 0.5,
            "back_pressure_Pa": back,
        }
        yield one(name, "air drawn", "kg/kg", inputs, brentq(missing, 0, 200, xtol=1e-13), 1e-9, SAME_EQUATION)


report(
    ["fluids", "CoolProp", "scipy", "cantera"],
    [
        *frictions(),
        *pipes(),
        *losses(),
        *ergun(),
        *airs(),
        *jets(),
        *propane(),
        *cylinders(),
        *blasts(),
        *tubes(),
        *beds(),
    ],
)
