"""Drives invented cars on a dynamometer and writes what their loggers record, with the truth beside it.

    runs.py make KIND COUNT SEED FOLDER [--twice] [--cars N] [--shape NAME]

KIND is exact (no scatter, nothing off), parts (no scatter and no sensor off, parts within their tolerances but for one), sound (scatter and
tolerances of parts and sensors), the name of one nuisance, all (every nuisance), the name of one fault (with every nuisance), two (two faults
at once), or mix (half without a fault, nine in twenty with one, one in twenty with two, of such sizes as the library takes for probable).
--twice takes the nuisances at twice their standard deviation: a single one at just that, either way; of all of them draws that are twice as wide.
--shape takes one shape of log for all runs (plain, or the name of one property as in SHAPES) instead of drawing them.

Into FOLDER go one CSV a run and cases.json: the plans as numbers in SI, and for each run its file, its shape, and the truth: what is off and by
how much. Of pumpFlow, injectorFlow, volumetricEfficiency, consumption and meter that is the logarithm of the factor, of regulatorGain a share, of
filterLoss in losses of the new filter; the others are added, in the unit of their name.

Written from docs/concepts.md, docs/pressures.md, docs/circuit.md, docs/mixture.md and the equations of docs/equations.md: of the library it
shares definitions and nothing else. It is a model of the car with its controller, its circuit, its sensors and their clocks, one row of the
log an instant. The library searches the flow; here the pressure in the rail is the unknown, of all rows at once.
All figures of cars are invented.
"""

import argparse
import json
import math
import sys
import zlib
from pathlib import Path

import numpy as np
from scipy.interpolate import PchipInterpolator

GAS_CONSTANT = 287.05287
GAMMA = 1.4
CARBON, HYDROGEN, OXYGEN = 12.011, 1.008, 15.999
OXYGEN_IN_AIR = 0.2314
HYDROGEN_ATOMS = 1.87
FULL_DENSITY = 101325 / (GAS_CONSTANT * 288.15)
COPPER, COPPER_PER_KELVIN, LAY = 1.7241e-8, 0.00393, 1.02
TEST_DENSITY = 683.8
LITRES_PER_HOUR = 1 / 3.6e6

# Standard deviations of sound parts and of sensors, as the library takes them by default (common practice, no source).
TOLERANCES = {
    "pumpFlow": 0.03, "feedOhms": 0.010, "filterLoss": 0.3, "regulatorBasePascals": 5e3, "regulatorGain": 0.02, "regulatorOnsetPascals": 2e3,
    "injectorFlow": 0.015, "deadTimeSeconds": 0.03e-3, "volumetricEfficiency": 0.025, "consumption": 0.04, "supplyVolts": 0.3,
}
CHANNELS = {"railPascals": 3e3, "manifoldPascals": 1e3, "meter": 0.01}
SCATTER = {
    "rpm": 8, "manifold": 500, "rail": 2000, "pulse": 1e-5, "lambda": 0.01, "flow": 0.01, "power": 0.01, "volts": 0.05, "kelvins": 0.3}
CLIPPED_AT = 2.5
GLITCHES = 0.01

NUISANCES = ["ve_boost", "ve_speed", "charge", "slope", "lambda_delay", "filters", "clock", "density"]
FAULTS = [
    "weak_pump", "voltage_drop", "clogged_filter", "wrong_base", "wrong_gain", "wrong_onset", "wrong_injectors", "rail_sensor",
    "manifold_sensor", "flow_meter", "air"]
# Sizes of faults as docs/findings.md takes them before a run: mean and standard deviation, in the unit of draw_fault's figures.
TAKEN = {
    "weak_pump": (-0.32, 0.15), "voltage_drop": (0.15, 0.07), "low_supply": (1.6, 0.5), "clogged_filter": (15, 5), "wrong_base": (42e3, 15e3),
    "wrong_gain": (0.22, 0.09), "wrong_onset": (18e3, 8e3), "wrong_injectors": (0.19, 0.06), "rail_sensor": (50e3, 20e3),
    "manifold_sensor": (10.5e3, 4e3), "flow_meter": (0.15, 0.06), "air": (0.2, 0.06)}
SHAPES = ["plain", "no_meter", "no_power", "neither", "duty", "blank", "repeated", "gaps", "quantised", "clipped", "fast", "slow"]

SECONDS = 50
# What a clogged filter takes over the plan at the highest flow of the run, at least.
CLOGGED_PASCALS = 40e3
RATE = 20


# Laws

def air_density(pressure, kelvins):
    return pressure / (GAS_CONSTANT * kelvins)


def stoichiometric():
    mass = CARBON + HYDROGEN_ATOMS * HYDROGEN
    oxygen = 2 * OXYGEN / CARBON * (CARBON / mass) + 2 * OXYGEN / (4 * HYDROGEN) * (HYDROGEN_ATOMS * HYDROGEN / mass)
    return oxygen / OXYGEN_IN_AIR


def fuel_density(at15, kelvins):
    expansion = 346.4228 / at15**2 + 0.4388 / at15
    warmer = expansion * (kelvins - 288.15)
    return at15 * np.exp(-warmer * (1 + 0.8 * warmer))


def dynamic_viscosity(at15, kelvins):
    """ln mu straight over 1/T through 0.55 mm2/s at 20 C and 0.9 mm2/s at -20 C."""
    warm, cold = 293.15, 253.15
    at_warm, at_cold = math.log(0.55e-6 * fuel_density(at15, warm)), math.log(0.9e-6 * fuel_density(at15, cold))
    slope = (at_cold - at_warm) / (1 / cold - 1 / warm)
    return np.exp(at_warm + slope * (1 / kelvins - 1 / warm))


def charge_kelvins(plan, pressure):
    ambient = plan["ambientPascals"]
    ratio = np.maximum(1, (pressure + plan["coolerLossPascals"]) / ambient)
    outlet = plan["ambientKelvins"] * (1 + (ratio ** ((GAMMA - 1) / GAMMA) - 1) / plan["compressorEfficiency"])
    return outlet - plan["coolerEffectiveness"] * (outlet - plan["ambientKelvins"])


def friction_factor(reynolds, roughness):
    """Hagen-Poiseuille up to Re 2040, Colebrook-White from 4000, f Re blended between them by s^2 (3 - 2 s)."""
    laminar = 64 / reynolds
    s = np.clip((reynolds - 2040) / (4000 - 2040), 0, 1)
    # Where the flow is laminar the other law has no share, and no number either at very low ones.
    reynolds = np.maximum(reynolds, 2040)
    x = np.full_like(reynolds, 6.0)
    for _ in range(25):
        inside = roughness / 3.7 + 2.51 * x / reynolds
        step = (x + 2 * np.log10(inside)) / (1 + 2 / math.log(10) * 2.51 / (reynolds * inside))
        x = x - step
        if np.all(np.abs(step) < 1e-13 * x):
            break
    return laminar + s * s * (3 - 2 * s) * (x**-2 - laminar)


def root_between(function, low, high, rounds=200):
    """Where a falling function of each row has its root, by false position with bisection every third round."""
    at_low, at_high = function(low), function(high)
    middle = low
    # What is halved is a weight of the false position, lest one end stay for ever; which end moves follows from the sign of the value alone.
    for turn in range(rounds):
        with np.errstate(divide="ignore", invalid="ignore"):
            straight = high - at_high * (high - low) / (at_high - at_low)
        halved = (low + high) / 2
        usable = np.isfinite(straight) & (straight > low) & (straight < high) & (turn % 3 != 2)
        last, middle = middle, np.where(usable, straight, halved)
        value = function(middle)
        above = value > 0
        at_high = np.where(above, at_high / 2, value)
        at_low = np.where(above, value, at_low / 2)
        low, high = np.where(above, middle, low), np.where(above, high, middle)
        near = np.abs(middle - last) <= 1e-12 * np.maximum(1, np.abs(middle))
        if np.all((high - low <= 1e-11 * np.abs(high) + 1e-9) | near | (value == 0)):
            break
    return middle


class Pump:
    """Measured curves carried to a voltage by the affinity laws and taken in proportion, behind the resistance of a feed."""

    def __init__(self, data):
        self.volts = [curve["volts"] for curve in data["curves"]]
        self.last = [curve["risesPascals"][-1] for curve in data["curves"]]
        self.flows = [PchipInterpolator(c["risesPascals"], c["flowsCubicMetresPerSecond"], extrapolate=False) for c in data["curves"]]
        self.currents = [
            PchipInterpolator(c["risesPascals"], c["currentsAmperes"]) if c["currentsAmperes"] else None for c in data["curves"]]

    def read(self, curves, power, rise, volts, beyond):
        upper = np.clip(np.searchsorted(self.volts, volts), 0, len(self.volts) - 1)
        out = np.zeros_like(rise)
        for place in range(len(self.volts)):
            # Below the lowest and above the highest curve it is that one alone.
            between = place > 0
            at = upper == place
            if not np.any(at):
                continue
            v, p = np.minimum(volts[at], self.volts[-1]), rise[at]
            share = (v - self.volts[place - 1]) / (self.volts[place] - self.volts[place - 1]) if between else np.ones_like(v)
            total = share * self.carried(curves, place, power, p, v, beyond)
            if between:
                total = total + (1 - share) * self.carried(curves, place - 1, power, p, v, beyond)
            out[at] = total
        return out

    def carried(self, curves, place, power, rise, volts, beyond):
        speed = volts / self.volts[place]
        scaled = rise / speed**2
        value = curves[place](np.clip(scaled, 0, self.last[place]))
        if not beyond:
            value = np.where(scaled > self.last[place], 0, value)
        return value * speed**power

    def motor_volts(self, rise, supply, ohms):
        volts = supply.copy()
        if ohms <= 0 or self.currents[0] is None:
            return volts
        for _ in range(100):
            drawn = self.read(self.currents, 2, rise, volts, True)
            after = supply - ohms * drawn
            done = np.max(np.abs(after - volts)) < 1e-12
            volts = after
            if done:
                break
        return volts

    def flow(self, rise, supply, ohms):
        return self.read(self.flows, 1, rise, self.motor_volts(rise, supply, ohms), False)


class DeadTime:
    """Monotone over voltage, straight over pressure."""

    def __init__(self, rows, volts):
        self.pressures = np.array([row["differentialPascals"] for row in rows])
        covered = np.clip(volts, rows[0]["volts"][0], rows[0]["volts"][-1])
        self.times = np.array([PchipInterpolator(row["volts"], row["seconds"])(covered) for row in rows])

    def at(self, differential):
        if len(self.pressures) == 1:
            return self.times[0]
        differential = np.clip(differential, self.pressures[0], self.pressures[-1])
        upper = np.clip(np.searchsorted(self.pressures, differential), 1, len(self.pressures) - 1)
        columns = np.arange(self.times.shape[1])
        share = (differential - self.pressures[upper - 1]) / (self.pressures[upper] - self.pressures[upper - 1])
        return self.times[upper - 1, columns] * (1 - share) + self.times[upper, columns] * share

    def rows(self, which):
        part = object.__new__(DeadTime)
        part.pressures, part.times = self.pressures, self.times[:, which]
        return part


def feed_ohms(feed):
    if feed is None:
        return 0.0
    resistivity = COPPER * (1 + COPPER_PER_KELVIN * (feed["kelvins"] - 293.15)) * LAY
    return resistivity * (feed["outwardMetres"] + feed["returnMetres"]) / feed["areaSquareMetres"] + feed["contactsOhms"]


def set_pressure(regulator, boost):
    return (
        regulator["basePascals"] + np.minimum(boost, regulator["onsetPascals"])
        + regulator["gain"] * np.maximum(0, boost - regulator["onsetPascals"]))


def efficiency(table, speed):
    places = [point["revolutionsPerSecond"] for point in table]
    return PchipInterpolator(places, [point["share"] for point in table])(np.clip(speed, places[0], places[-1]))


# The cars

def rounded(value, figures=4):
    return float(f"{value:.{figures}g}")


def invented_car(number, seed):
    """A plan, with its figures drawn; pump and injectors are sized to it."""
    rng = np.random.default_rng([seed, 1, number])
    between = lambda low, high, figures=4: rounded(rng.uniform(low, high), figures)
    cylinders = 4 if number % 2 == 0 else 6
    litres = between(2.03, 2.58) if cylinders == 4 else between(2.43, 3.18)
    kind = ["speed-density", "speed-density rising", "throttle"][[0, 1, 2, 0, 1, 0, 2, 1, 0, 1][number % 10]]
    rising = kind != "speed-density"
    knots = int(rng.integers(5, 8))
    inner = np.linspace(800, 7300, knots)
    inner[1:-1] += rng.uniform(-150, 150, knots - 2)
    peak, width = rng.uniform(4300, 5600), rng.uniform(5000, 6500)
    shares = rng.uniform(0.93, 1.02) * (1 - ((inner - peak) / width) ** 2 * 0.55) + rng.uniform(-0.012, 0.012, knots)
    plan = {
        "number": number,
        "controlledBy": kind,
        "displacementCubicMetres": litres * 1e-3,
        "cylinders": cylinders,
        "speedLimitRevolutionsPerSecond": 7300 / 60,
        "topRevolutionsPerSecond": between(6600, 7100) / 60,
        "volumetricEfficiency": [
            {"revolutionsPerSecond": rounded(n, 5) / 60, "share": rounded(share)} for n, share in zip(inner, shares)],
        "compressorEfficiency": between(0.66, 0.76, 3),
        "coolerEffectiveness": between(0.6, 0.78, 3),
        "coolerLossPascals": between(3e3, 8e3, 3),
        "maximumBoostPascals": between(50e3, 58e3, 3) if kind == "throttle" else between(52e3, 88e3, 3),
        "targetLambda": between(0.8, 0.845, 3),
        "consumptionKilogramsPerJoule": between(295, 335, 3) / 3.6e9,
        "mechanicalEfficiency": 0.85,
        "ambientPascals": between(93.5e3, 101.5e3),
        "ambientKelvins": between(286, 301),
        "supplyVolts": between(13.3, 13.9, 3),
        "fuelKelvins": between(303, 313),
        "fuelKilogramsPerCubicMetreAt15C": between(732, 757),
    }
    plan["regulator"] = {
        "kind": "rising" if rising else "manifold",
        "basePascals": between(285e3, 315e3, 3),
        "gain": (between(3.4, 4, 3) if kind == "throttle" else between(1.4, 3.6, 3)) if rising else 1.0,
        "onsetPascals": between(0, 10e3, 3) if kind == "throttle" else between(0, 25e3, 3) if rising else 0.0,
    }
    plan["power"] = [
        {"revolutionsPerSecond": point["revolutionsPerSecond"], "watts": rounded(
            point["share"] * air_density(101325, 298.15) * litres * 1e-3 * point["revolutionsPerSecond"] / 2
            / (0.88 * stoichiometric()) / plan["consumptionKilogramsPerJoule"])}
        for point in plan["volumetricEfficiency"]]
    bore, length = between(7.1e-3, 9.3e-3, 3), between(2.5, 4.5, 3)
    plan["line"] = {"boreMetres": bore, "lengthMetres": length, "roughnessMetres": 1.5e-6}
    plan["filter"] = {
        "ratedFlowCubicMetresPerSecond": between(140, 260, 3) * LITRES_PER_HOUR, "ratedLossPascals": between(5e3, 16e3, 3),
        "cloggingFactor": between(1, 1.6, 3), "ratedPascalSeconds": 4.1e-4}
    wired = bool(rng.random() < 0.6)
    plan["feed"] = {
        "areaSquareMetres": between(2.2e-6, 4.4e-6, 3), "outwardMetres": between(3.5, 5.5, 3), "returnMetres": between(0.6, 2.5, 3),
        "kelvins": 323.15, "contactsOhms": between(0.008, 0.02, 3)} if wired else None
    size_injectors(plan, rng)
    size_pump(plan, rng, wired)
    return plan


def dead_time_rows(rng):
    """Dead time over voltage, at several pressures or at all of them."""
    volts = [8.0, 10.0, 11.5, 13.0, 14.5, 16.0]
    at14, exponent, slope = rng.uniform(0.65, 0.95), rng.uniform(1.5, 2.0), rng.uniform(0.3, 0.8)
    def row(pressure):
        return {
            "differentialPascals": pressure, "volts": volts,
            "seconds": [rounded(at14 * (14 / v) ** exponent * (1 + slope * (pressure - 300e3) / 1e6) * 1e-3) for v in volts]}
    return [row(pressure) for pressure in ([60e3, 180e3, 310e3, 450e3, 700e3, 1100e3] if rng.random() < 0.6 else [300e3])]


def size_injectors(plan, rng):
    top = 1.02 * plan["topRevolutionsPerSecond"]
    plan["injectors"] = {
        "count": plan["cylinders"], "ratedPascals": 300e3, "testKilogramsPerCubicMetre": TEST_DENSITY, "deadTime": dead_time_rows(rng)}
    speed = np.linspace(0.5 * top, top, 40)
    boost = np.full(40, plan["maximumBoostPascals"])
    pressure = plan["ambientPascals"] + boost
    air = planned_air(plan, speed, pressure, charge_kelvins(plan, pressure))
    needed = air / (plan["targetLambda"] * stoichiometric()) / fuel_density(plan["fuelKilogramsPerCubicMetreAt15C"], plan["fuelKelvins"])
    differential = set_pressure(plan["regulator"], boost) - boost
    dead = DeadTime(plan["injectors"]["deadTime"], np.full(40, plan["supplyVolts"])).at(differential)
    share = rng.uniform(0.69, 0.79) - dead * speed / 2
    flow = np.max(needed / share / np.sqrt(differential / 300e3 * TEST_DENSITY / 730)) / plan["cylinders"]
    plan["injectors"]["staticCubicMetresPerSecond"] = rounded(flow * 6e7, 3) / 6e7
    # What the controller aims at, by the load that it believes in.
    aim = plan["targetLambda"]
    if plan["controlledBy"] == "throttle":
        # It knows no boost: it has to be so rich without, that the pressure makes up for the rest.
        denser = air_density(pressure, charge_kelvins(plan, pressure)) / air_density(plan["ambientPascals"], plan["ambientKelvins"])
        aim = max(0.62, rounded(float(np.min(aim / denser * np.sqrt(differential / plan["regulator"]["basePascals"]))), 3))
    plan["controller"] = {
        "kind": "throttle" if plan["controlledBy"] == "throttle" else "speed-density",
        "correctsForRailPressure": plan["controlledBy"] == "speed-density rising",
        "differentialPascals": plan["regulator"]["basePascals"],
        "fuelKelvins": 293.15,
        "endPascals": 300e3,
        # Injectors that a pulse as long as the cycle holds open pass more than one that is a little shorter: a rail that sags then has two states.
        "maximumDutyCycle": 0.95,
        "target": [{"load": 0.45, "lambda": 1.0}, {"load": 0.6, "lambda": rounded((1 + aim) / 2, 3)}, {"load": 0.72, "lambda": aim}],
    }


def planned_air(plan, speed, pressure, kelvins):
    return efficiency(plan["volumetricEfficiency"], speed) * air_density(pressure, kelvins) * plan["displacementCubicMetres"] * speed / 2


def size_pump(plan, rng, wired):
    """A pump of its own shape, of such a size that 5 to 20 % are left at full boost."""
    curvature, deadhead = rng.uniform(1.8, 2.6), rng.uniform(1.45, 1.8)
    at_full = float(set_pressure(plan["regulator"], np.array(plan["maximumBoostPascals"])))
    deadhead = rounded(max(deadhead * at_full, 720e3), 3)
    places = np.array([0, 0.17, 0.36, 0.55, 0.72, 0.88, 1])
    measured = [9.5, 15.0] if rng.random() < 0.5 else [9.6, 12.4, 15.2]
    fall = rng.uniform(0.35, 0.55)
    amperes, climb = rng.uniform(4, 5.5), rng.uniform(6, 9)
    def pump(free):
        curves = []
        for volts in measured:
            speed = volts / 13.5
            curves.append({
                "volts": volts,
                "risesPascals": [rounded(place * deadhead * speed**1.6) for place in places],
                "flowsCubicMetresPerSecond": [
                    rounded(free * speed * max(0, 1 - fall * place - (1 - fall) * place**curvature), 5) for place in places],
                "currentsAmperes": [rounded((amperes + climb * place) * speed**1.1) for place in places] if wired else None})
            curves[-1]["flowsCubicMetresPerSecond"][-1] = 0.0
        return {"curves": curves}
    speed = np.linspace(0.6 * plan["topRevolutionsPerSecond"], plan["topRevolutionsPerSecond"], 30)
    boost = np.full(30, plan["maximumBoostPascals"])
    plant = Plant({**plan, "pump": pump(10 * 300 * LITRES_PER_HOUR)}, {}, {})
    solved = plant.solve(speed, plan["ambientPascals"] + boost, np.full(30, plan["supplyVolts"]), np.full(30, plan["fuelKelvins"]))
    worst = int(np.argmax(solved["injected"]))
    wanted = solved["injected"][worst] * rng.uniform(1.05, 1.2)
    rail = solved["rail"][worst]
    rise = np.array([rail + plant.loss(np.array([wanted]), plant.density(plan["fuelKelvins"]), plan["fuelKelvins"])[0]])
    supply, ohms = np.array([plan["supplyVolts"]]), feed_ohms(plan["feed"])
    per_unit = Pump(pump(1e-4)).flow(rise, supply, ohms)[0] / 1e-4
    plan["pump"] = pump(rounded(wanted / per_unit, 4))


# The car as it is

class Plant:
    """A car that is off its plan by the figures of off, and by nuisances."""

    def __init__(self, plan, off, nuisances):
        self.plan, self.off, self.nuisances = plan, off, nuisances
        get = lambda name: off.get(name, 0.0)
        self.pump = Pump(plan["pump"])
        self.pump_factor = math.exp(get("pumpFlow"))
        self.ohms = max(0.0, feed_ohms(plan["feed"]) + get("feedOhms"))
        self.clogging = max(1.0, plan["filter"]["cloggingFactor"] + get("filterLoss"))
        unit = plan["regulator"]
        self.regulator = {
            "basePascals": unit["basePascals"] + get("regulatorBasePascals"),
            "gain": unit["gain"] * (1 + get("regulatorGain")),
            "onsetPascals": max(0.0, unit["onsetPascals"] + get("regulatorOnsetPascals")) if unit["kind"] == "rising" else 0.0}
        self.injector_factor = math.exp(get("injectorFlow"))
        self.dead_time_off = get("deadTimeSeconds")
        self.efficiency_factor = math.exp(get("volumetricEfficiency"))
        self.rail_off, self.manifold_off = get("railPascals"), get("manifoldPascals")
        self.density_factor = math.exp(nuisances.get("density", 0.0))
        self.slope = nuisances.get("slope", 0.0)
        self.returned = self.free_return() if self.slope else 1.0

    def density(self, kelvins):
        return self.density_factor * fuel_density(self.plan["fuelKilogramsPerCubicMetreAt15C"], kelvins)

    def loss(self, flow, density, kelvins):
        line, filters = self.plan["line"], self.plan["filter"]
        viscosity = dynamic_viscosity(self.plan["fuelKilogramsPerCubicMetreAt15C"], kelvins)
        speed = np.maximum(1e-9, flow) / (math.pi * line["boreMetres"] ** 2 / 4)
        reynolds = speed * line["boreMetres"] * density / viscosity
        pipe = (friction_factor(reynolds, line["roughnessMetres"] / line["boreMetres"])
                * line["lengthMetres"] / line["boreMetres"] * density * speed**2 / 2)
        return pipe + (
            self.clogging * filters["ratedLossPascals"] * flow / filters["ratedFlowCubicMetresPerSecond"]
            * viscosity / filters["ratedPascalSeconds"])

    def pumped(self, rise, supply):
        return self.pump_factor * self.pump.flow(rise, supply, self.ohms)

    def free_return(self):
        """What returns at 13.5 V with nothing injected and no boost: the flow at which the regulator was set."""
        supply, kelvins = np.array([13.5]), np.array([self.plan["fuelKelvins"]])
        density = self.density(kelvins)
        held = self.regulator["basePascals"]
        most = self.pumped(np.array([held]), supply)
        return float(root_between(
            lambda flow: self.pumped(held + self.loss(flow, density, kelvins), supply) - flow, np.zeros(1), most)[0])

    def air(self, speed, pressure):
        """What the engine truly takes, kg/s."""
        boost = np.maximum(0, pressure - self.plan["ambientPascals"])
        more = self.nuisances.get("ve_boost", 0.0) * boost / 100e3
        for wave in self.nuisances.get("ve_speed", []):
            more = more + wave["share"] * np.sin(2 * np.pi * speed * 60 / wave["periodRpm"] + wave["phase"])
        kelvins = charge_kelvins(self.plan, pressure) + self.nuisances.get("charge", 0.0) * boost / 60e3
        return self.efficiency_factor * np.exp(more) * planned_air(self.plan, speed, pressure, kelvins)

    def wanted(self, speed, pressure):
        """Fuel that the controller wants, kg/s, by what its own manifold sensor reads."""
        plan, of = self.plan, self.plan["controller"]
        seen = pressure + self.manifold_off
        ambient = plan["ambientPascals"]
        if of["kind"] == "throttle":
            # Its throttle is open as the true pressure says; the sensor is the logger's alone.
            air = planned_air(plan, speed, ambient * np.minimum(1, pressure / ambient), plan["ambientKelvins"])
        else:
            air = planned_air(plan, speed, np.minimum(seen, of["endPascals"]), charge_kelvins(plan, seen))
        load = air * 2 / speed / (FULL_DENSITY * plan["displacementCubicMetres"])
        aim = np.interp(load, [each["load"] for each in of["target"]], [each["lambda"] for each in of["target"]])
        return air / (aim * stoichiometric())

    def solve(self, speed, pressure, volts, kelvins):
        """Rail, injected flow, pulse and the rest, of rows with the engine running."""
        plan, injectors, of = self.plan, self.plan["injectors"], self.plan["controller"]
        boost = pressure - plan["ambientPascals"]
        cycle = 2 / speed
        dead_time = DeadTime(injectors["deadTime"], volts)
        static = injectors["staticCubicMetresPerSecond"] / math.sqrt(injectors["ratedPascals"])
        believed = math.sqrt(injectors["testKilogramsPerCubicMetre"] / float(
            fuel_density(plan["fuelKilogramsPerCubicMetreAt15C"], of["fuelKelvins"])))
        density = self.density(kelvins)
        actual = self.injector_factor * np.sqrt(injectors["testKilogramsPerCubicMetre"] / density)
        volume = self.wanted(speed, pressure) / fuel_density(plan["fuelKilogramsPerCubicMetreAt15C"], of["fuelKelvins"]) / injectors["count"] * cycle

        def pulse_at(rail, at, dead):
            across = np.full_like(rail, of["differentialPascals"])
            if of["correctsForRailPressure"]:
                # Both of its sensors err as the logger has them, for they are the same.
                across = np.maximum(1e3, rail + self.rail_off - boost[at] - self.manifold_off)
            return np.minimum(of["maximumDutyCycle"] * cycle[at], dead.at(across) + volume[at] / (static * np.sqrt(across) * believed))

        def injected_at(rail, at, dead):
            across = np.maximum(0, rail - boost[at])
            pulse = pulse_at(rail, at, dead)
            opened = np.maximum(0, pulse - dead.at(across) - self.dead_time_off)
            return injectors["count"] * static * np.sqrt(across) * actual[at] * opened / cycle[at]

        everywhere = np.arange(len(speed))
        setting = set_pressure(self.regulator, boost)
        rail = setting.copy()
        if self.slope:
            for _ in range(100):
                after = setting - self.slope * injected_at(rail, everywhere, dead_time) / self.returned
                done = np.max(np.abs(after - rail)) < 1e-8
                rail = after
                if done:
                    break
        governed = rail.copy()
        flow = injected_at(rail, everywhere, dead_time)
        short = self.pumped(rail + self.loss(flow, density, kelvins), volts) < flow
        if np.any(short):
            at = np.nonzero(short)[0]
            dead, v, d, k = dead_time.rows(at), volts[at], density[at], kelvins[at]

            def spare(rail):
                taken = injected_at(rail, at, dead)
                return self.pumped(rail + self.loss(taken, d, k), v) - taken

            rail[at] = root_between(spare, np.maximum(1e3, boost[at] + 1e3), governed[at])
            flow = injected_at(rail, everywhere, dead_time)
        air = self.air(speed, pressure)
        mass = density * flow
        return {
            "rail": rail, "injected": flow, "pulse": pulse_at(rail, everywhere, dead_time), "air": air, "mass": mass, "short": short,
            "lambda": air / (stoichiometric() * np.maximum(mass, 1e-12)), "cycle": cycle}


# The course

class Course:
    """Where the driver takes the engine: speed, manifold pressure and voltage over time."""

    def __init__(self, plan, rng, low_voltage):
        self.pieces, self.time, self.pressure, self.speed = [], 0.0, plan["ambientPascals"], 0.0
        self.ambient, self.rest = plan["ambientPascals"], 2.0
        top, most = plan["topRevolutionsPerSecond"], plan["maximumBoostPascals"]
        self.volts = [(0.0, 0.0), (self.rest, 0.0)]
        self.stretch(self.rest, 0.0, 0.0, self.ambient, 1.0)
        self.stretch(1.2, 900 / 60, 900 / 60, 38e3, 0.1)
        self.stretch(2.0, 2300 / 60, 2450 / 60, rng.uniform(55e3, 75e3), 0.15)
        shares = [rng.uniform(0.28, 0.45), 1.0, rng.uniform(0.55, 0.8), 1.0, rng.uniform(0.8, 0.95)]
        drops = [0.0, 0.0, 0.0, -0.6, -1.3] if low_voltage else [0.0] * 5
        order = rng.permutation(5)
        for place in order:
            start = rng.uniform(2350, 2500) / 60
            self.volts += [(self.time + 0.1, drops[place])]
            self.pull(rng.uniform(5.7, 6.3), start, top, shares[place] * most, rng.uniform(0.7, 1.3))
            self.volts += [(self.time, drops[place]), (self.time + 0.4, 0.0)]
            self.stretch(1.2, top, start, rng.uniform(35e3, 50e3), 0.12)
            self.stretch(rng.uniform(1.1, 1.5), start, start, rng.uniform(45e3, 85e3), 0.15)
        self.stretch(max(1.0, SECONDS + 1 - self.time), 2900 / 60, 2950 / 60, rng.uniform(60e3, 88e3), 0.2)

    def stretch(self, seconds, start, end, pressure, slowness):
        self.pieces.append((self.time, seconds, start, end, self.pressure, pressure, slowness, 0.0, 1.0))
        self.time += seconds
        self.pressure = pressure + (self.pressure - pressure) * math.exp(-seconds / slowness)

    def pull(self, seconds, start, end, boost, spool):
        self.pieces.append((self.time, seconds, start, end, self.pressure, self.ambient, 0.12, boost, spool))
        self.time += seconds
        self.pressure = (self.ambient + (self.pressure - self.ambient) * math.exp(-seconds / 0.12)
                         + boost * (1 - math.exp(-seconds / spool)))

    def at(self, times):
        speed, pressure = np.zeros_like(times), np.zeros_like(times)
        for begin, seconds, start, end, before, after, slowness, boost, spool in self.pieces:
            here = (times >= begin - 1e-9) & (times < begin + seconds - 1e-9)
            since = times[here] - begin
            share = since / seconds
            # Slower as it gets faster, on a pull.
            speed[here] = start + (end - start) * (1 - (1 - share) ** 1.2 if boost else share)
            pressure[here] = after + (before - after) * np.exp(-since / slowness) + boost * (1 - np.exp(-since / spool))
        return speed, pressure, np.interp(times, *zip(*self.volts))


# Sensors and clocks

def lagged(times, values, seconds):
    """A first-order lag, exact for what is straight between the rows."""
    if seconds <= 0:
        return values
    out = np.empty_like(values)
    out[0] = values[0]
    step = np.diff(times)
    decay = np.exp(-step / seconds)
    held = (1 - decay) * seconds / step
    for row in range(len(step)):
        out[row + 1] = decay[row] * out[row] + (held[row] - decay[row]) * values[row] + (1 - held[row]) * values[row + 1]
    return out


def earlier(times, values, seconds):
    return np.interp(times - seconds, times, values) if seconds else values


def draw_off(rng, plan):
    """How far the sound parts and sensors of one car are off."""
    clipped = lambda: float(np.clip(rng.standard_normal(), -CLIPPED_AT, CLIPPED_AT))
    off = {name: spread * clipped() for name, spread in TOLERANCES.items()}
    off.update({name: spread * clipped() for name, spread in CHANNELS.items()})
    off["filterLoss"] = max(1 - plan["filter"]["cloggingFactor"], off["filterLoss"])
    if plan["regulator"]["kind"] != "rising":
        # A diaphragm of one area has a gain of one, and no onset.
        off["regulatorOnsetPascals"] = off["regulatorGain"] = 0.0
    if plan["feed"] is None:
        off["feedOhms"] = 0.0
    return off


def draw_nuisance(rng, name, scale, fixed):
    """One nuisance: drawn from its normal distribution, scaled; or, fixed, at just the scaled deviation, either way."""
    sign = 1 if rng.random() < 0.5 else -1
    normal = lambda: sign * scale if fixed else scale * float(rng.standard_normal())
    if name == "ve_boost":
        return 0.04 * normal()
    if name == "charge":
        return 8.0 * normal()
    if name == "density":
        return 0.008 * normal()
    if name == "slope":
        return 10e3 * abs(normal())
    if name == "clock":
        return 0.05 * normal()
    if name == "filters":
        return {"manifoldSeconds": 0.03 * abs(normal()), "railSeconds": 0.03 * abs(normal())}
    if name == "lambda_delay":
        wide = 0.08 * (sign * scale if fixed else scale * math.sqrt(3) * rng.uniform(-1, 1))
        return {"transportSeconds": max(0.0, 0.15 + wide), "lagSeconds": 0.08 * abs(normal())}
    # Volumetric efficiency over speed: three waves, whose mean square at a point is that of the deviation.
    waves = [
        {"share": 0.02 * scale * math.sqrt(2 / 3) * float(rng.standard_normal()), "periodRpm": float(period), "phase": float(rng.uniform(0, 2 * np.pi))}
        for period in rng.uniform([2500, 3600, 5500], [3600, 5500, 9000])]
    if fixed:
        speed = np.linspace(2400, 7000, 200)
        shape = sum(wave["share"] * np.sin(2 * np.pi * speed / wave["periodRpm"] + wave["phase"]) for wave in waves)
        norm = 0.02 * scale / math.sqrt(float(np.mean(shape**2)))
        for wave in waves:
            wave["share"] *= norm
    return waves


def draw_fault(rng, name, plan):
    """What a fault puts off, and how it is told."""
    either = lambda low, high: rng.uniform(low, high) * (1 if rng.random() < 0.5 else -1)
    if name == "weak_pump":
        return {"pumpFlow": math.log(rng.uniform(0.66, 0.82))}
    if name == "voltage_drop":
        if plan["feed"] is not None and rng.random() < 0.5:
            return {"feedOhms": rng.uniform(0.09, 0.2)}
        return {"supplyVolts": -rng.uniform(1.2, 1.8)}
    if name == "clogged_filter":
        return {"filterLoss": rng.uniform(12, 20)}
    if name == "wrong_base":
        return {"regulatorBasePascals": either(30e3, 60e3)}
    if name == "wrong_gain":
        return {"regulatorGain": either(0.12, 0.3)}
    if name == "wrong_onset":
        return {"regulatorOnsetPascals": rng.uniform(12e3, 25e3)}
    if name == "wrong_injectors":
        return {"injectorFlow": math.log(1 + either(0.15, 0.25))}
    if name == "rail_sensor":
        return {"railPascals": either(35e3, 70e3)}
    if name == "manifold_sensor":
        return {"manifoldPascals": either(6e3, 15e3)}
    if name == "flow_meter":
        return {"meter": math.log(1 + either(0.1, 0.2))}
    return {"volumetricEfficiency": math.log(1 + either(0.16, 0.25))}


def draw_as_taken(rng, name, plan):
    """The same from the sizes that the library takes for probable, with their tails: by such the probabilities that it states are to be judged."""
    while True:
        drawn = draw_once_as_taken(rng, name, plan)
        (quantity, size), = drawn.items()
        # What a sound part may be off by as well is no fault of it.
        if abs(size) > CLIPPED_AT * {**TOLERANCES, **CHANNELS}[quantity]:
            return drawn


def draw_once_as_taken(rng, name, plan):
    sign = 1 if rng.random() < 0.5 else -1
    if name == "voltage_drop" and (plan["feed"] is None or rng.random() < 0.5):
        return {"supplyVolts": -rng.normal(*TAKEN["low_supply"])}
    size = rng.normal(*TAKEN[name])
    if name in ("weak_pump", "voltage_drop", "clogged_filter"):
        quantity = {"weak_pump": "pumpFlow", "voltage_drop": "feedOhms", "clogged_filter": "filterLoss"}[name]
        return {quantity: min(size, 0.0) if name == "weak_pump" else max(size, 0.0)}
    if name == "wrong_onset" and sign * size < -plan["regulator"]["onsetPascals"]:
        # No onset lies under atmospheric pressure.
        sign = -sign
    quantity = {
        "wrong_base": "regulatorBasePascals", "wrong_gain": "regulatorGain", "wrong_onset": "regulatorOnsetPascals", "wrong_injectors": "injectorFlow",
        "rail_sensor": "railPascals", "manifold_sensor": "manifoldPascals", "flow_meter": "meter", "air": "volumetricEfficiency"}[name]
    return {quantity: sign * size}


def draw_shape(rng, name):
    shape = {
        "hertz": RATE, "slowChannels": "none", "slowEvery": 1, "gaps": False, "quantised": False, "clipped": False, "meter": True, "power": True,
        "duty": False, "manifold": "absolute"}
    if name == "drawn":
        shape.update(
            hertz=int(rng.choice([10, 20, 20, 20, 50])), slowChannels=str(rng.choice(["none", "blank", "repeated"], p=[0.5, 0.25, 0.25])),
            gaps=bool(rng.random() < 0.25), quantised=bool(rng.random() < 0.25), clipped=bool(rng.random() < 0.3),
            meter=bool(rng.random() < 0.6), power=bool(rng.random() < 0.6), duty=bool(rng.random() < 0.3),
            manifold=str(rng.choice(["absolute", "boost"])))
    elif name != "plain":
        shape.update({
            "no_meter": {"meter": False}, "no_power": {"power": False}, "neither": {"meter": False, "power": False}, "duty": {"duty": True},
            "blank": {"slowChannels": "blank"}, "repeated": {"slowChannels": "repeated"}, "gaps": {"gaps": True},
            "quantised": {"quantised": True}, "clipped": {"clipped": True}, "fast": {"hertz": 50}, "slow": {"hertz": 10}}[name])
    if shape["slowChannels"] != "none":
        shape["slowEvery"] = int(rng.integers(2, 6))
    return shape


SLOW = ["lambda", "volts", "kelvins", "flow", "power"]


def eight_bits(values, low, high):
    step = (high - low) / 255
    return low + step * np.clip(np.round((values - low) / step), 0, 255)


def recorded(plan, plant, rng, shape, exact):
    """The channels as the logger writes them, in SI, and which rows are not written."""
    off, nuisances = plant.off, plant.nuisances
    times = np.arange(round(SECONDS * shape["hertz"])) / shape["hertz"]
    low_voltage = bool(rng.random() < 0.5)
    course = Course(plan, rng, low_voltage)
    speed, pressure, drop = course.at(times)
    volts = plan["supplyVolts"] + off.get("supplyVolts", 0.0) + drop
    kelvins = plan["fuelKelvins"] - 1.5 + 3 * times / SECONDS
    runs = speed > 0
    solved = plant.solve(speed[runs], pressure[runs], volts[runs], kelvins[runs])
    volts = np.where(runs, volts, 12.4)

    def everywhere(name, at_rest):
        values = np.full(len(times), float(at_rest))
        values[runs] = solved[name]
        return values

    # At rest the pump runs, nothing is injected, and the lambda sensor is in air.
    rail = everywhere("rail", plant.regulator["basePascals"])
    lam = np.minimum(everywhere("lambda", 2.0), 2.0)
    power = everywhere("mass", 0) / (plan["consumptionKilogramsPerJoule"] * math.exp(off.get("consumption", 0.0)))
    channels = {
        "time": times, "rpm": speed * 60, "manifold": pressure, "rail": rail, "pulse": everywhere("pulse", 0), "lambda": lam,
        "volts": volts, "power": power, "kelvins": kelvins, "flow": everywhere("injected", 0)}
    delay = nuisances.get("lambda_delay", {"transportSeconds": 0.0, "lagSeconds": 0.0})
    clock = nuisances.get("clock", 0.0)
    filters = nuisances.get("filters", {"manifoldSeconds": 0.0, "railSeconds": 0.0})
    channels["lambda"] = earlier(times, lagged(times, earlier(times, lam, delay["transportSeconds"]), delay["lagSeconds"]), clock)
    channels["flow"] = earlier(times, channels["flow"], clock) * math.exp(off.get("meter", 0.0))
    channels["manifold"] = lagged(times, channels["manifold"], filters["manifoldSeconds"]) + off.get("manifoldPascals", 0.0)
    channels["rail"] = lagged(times, channels["rail"], filters["railSeconds"]) + off.get("railPascals", 0.0)
    if not exact:
        scattered(channels, rng, runs)
    if shape["duty"]:
        channels["duty"] = np.where(runs, channels.pop("pulse") * channels["rpm"] / 120, 0)
    if shape["clipped"]:
        channels["lambda"] = np.clip(channels["lambda"], 0.70, 1.30)
    if shape["quantised"]:
        channels["manifold"] = eight_bits(channels["manifold"], 10e3, 300e3)
        channels["rail"] = eight_bits(channels["rail"], 0, 1000e3)
        channels["lambda"] = eight_bits(channels["lambda"], 0.5, 1.5)
        channels["volts"] = eight_bits(channels["volts"], 0, 20)
    for name in ["flow", "power"]:
        if not shape["meter" if name == "flow" else "power"]:
            channels.pop(name)
    written = np.ones(len(times), bool)
    if shape["gaps"]:
        for begin in rng.uniform(4, SECONDS - 4, int(rng.integers(2, 6))):
            written &= ~((times > begin) & (times < begin + rng.uniform(0.2, 1.5)))
    new_loss = plan["filter"]["ratedLossPascals"] * (
        dynamic_viscosity(plan["fuelKilogramsPerCubicMetreAt15C"], plan["fuelKelvins"]) / plan["filter"]["ratedPascalSeconds"])
    most = float(np.max(solved["injected"]))
    facts = {
        "filterOverPlanPascals": off.get("filterLoss", 0.0) * new_loss * most / plan["filter"]["ratedFlowCubicMetresPerSecond"],
        "lowVoltagePulls": low_voltage, "saggingRows": int(np.count_nonzero(solved["short"])),
        "freeReturnCubicMetresPerSecond": plant.returned if plant.slope else None,
        "highestDuty": float(np.max(solved["pulse"] / solved["cycle"]))}
    return channels, written, facts


def scattered(channels, rng, runs):
    count = len(channels["time"])
    normal = lambda spread: spread * rng.standard_normal(count)
    glitch = rng.random(count) < GLITCHES
    for name in ["manifold", "rail", "volts", "kelvins"]:
        channels[name] = channels[name] + normal(SCATTER[name])
    channels["rail"] = channels["rail"] + np.where(glitch, normal(60e3), 0)
    for name in ["rpm", "pulse"]:
        channels[name] = np.where(runs, np.maximum(0, channels[name] + normal(SCATTER[name])), 0)
    for name in ["lambda", "flow", "power"]:
        channels[name] = channels[name] * np.exp(normal(SCATTER[name]))
    channels["lambda"] = channels["lambda"] * np.where(glitch, 1.3, 1)


# Column, scale and what is taken off before it, digits.
COLUMNS = {
    "time": ("Time (s)", 1, 0, 3), "rpm": ("Speed (rev/min)", 1, 0, 1), "manifold": ("Manifold (kPa)", 1e-3, 0, 3), "rail": ("Rail (kPa)", 1e-3, 0, 3),
    "pulse": ("Pulse (ms)", 1e3, 0, 4), "duty": ("Duty (%)", 100, 0, 3), "lambda": ("Lambda", 1, 0, 4), "volts": ("Battery (V)", 1, 0, 3),
    "power": ("Power (kW)", 1e-3, 0, 3), "kelvins": ("Fuel (°C)", 1, 273.15, 2), "flow": ("Flow (L/h)", 3.6e6, 0, 3)}


def write_csv(file, plan, channels, written, shape, exact):
    headings, cells = [], []
    rows = np.nonzero(written)[0]
    for name, values in channels.items():
        heading, scale, less, digits = COLUMNS[name]
        if name == "manifold" and shape["manifold"] == "boost":
            heading, less = "Boost (kPa)", plan["ambientPascals"]
        values = (values - less) * scale
        slow = name in SLOW and shape["slowEvery"] > 1
        if slow and shape["slowChannels"] == "repeated":
            values = values[(np.arange(len(values)) // shape["slowEvery"]) * shape["slowEvery"]]
        form = "%.15g" if exact else f"%.{digits}f"
        column = [form % value for value in values[rows].tolist()]
        if slow and shape["slowChannels"] == "blank":
            column = [cell if row % shape["slowEvery"] == 0 else "" for row, cell in zip(rows.tolist(), column)]
        headings.append(heading)
        cells.append(column)
    file.write_text("\n".join([",".join(headings), *map(",".join, zip(*cells))]) + "\n", encoding="utf-8")


# Cases

def faults_of(kind, rng, plan, meter):
    """The faults that one run of a kind has."""
    possible = [name for name in FAULTS if plan["regulator"]["kind"] == "rising" or name not in ("wrong_gain", "wrong_onset")]
    if kind in FAULTS:
        return [kind]
    if kind == "parts":
        return [str(rng.choice([name for name in possible if name not in ("rail_sensor", "manifold_sensor", "flow_meter")]))]
    if kind == "mix":
        # As probable as the library takes them before it has seen a run: half sound, nine in twenty with one fault, one in twenty with two.
        count = int(rng.choice(3, p=[0.5, 0.45, 0.05]))
        return [str(name) for name in rng.choice([name for name in possible if meter or name != "flow_meter"], count, replace=False)]
    return [str(name) for name in rng.choice(possible, 2, replace=False)] if kind == "two" else []


def make_case(kind, number, seed, cars, twice, shape_name, folder):
    """
    One run. A fault of the supply shows only where the pump is the limit: such a run is driven anew until it is, in a twelfth of its rows. So is one with a
    filter that takes less than the page says, for how many times a new one's pressure drop that is says nothing where a new one hardly has any.
    """
    for attempt in range(200):
        case, rows = drive_case(kind, number, attempt, seed, cars, twice, shape_name, folder)
        off = case["truth"]["off"]
        hidden = kind in ("weak_pump", "clogged_filter") or (kind == "voltage_drop" and abs(off.get("supplyVolts", 0)) < 1)
        small = kind == "clogged_filter" and case["truth"]["facts"]["filterOverPlanPascals"] < CLOGGED_PASCALS
        if not small and (not hidden or case["truth"]["facts"]["saggingRows"] >= rows / 12):
            break
    return case


def drive_case(kind, number, attempt, seed, cars, twice, shape_name, folder):
    rng = np.random.default_rng([seed, 2, zlib.crc32(kind.encode()), number, attempt])
    exact = kind in ("exact", "parts")
    able = [car for car in cars if kind not in ("wrong_gain", "wrong_onset") or car["regulator"]["kind"] == "rising"]
    plan = able[number % len(able) if exact else int(rng.integers(len(able)))]
    shape = draw_shape(rng, shape_name or ("plain" if exact else "drawn"))
    faults = faults_of(kind, rng, plan, shape["meter"])
    off = {} if kind == "exact" else draw_off(rng, plan)
    if kind == "parts":
        off.update({name: 0.0 for name in CHANNELS})
    told = []
    for name in faults:
        size = {key: float(value) for key, value in (draw_as_taken if kind == "mix" else draw_fault)(rng, name, plan).items()}
        off.update(size)
        told.append({"name": name, **size})
    names = [] if kind in ("exact", "parts", "sound") else [kind] if kind in NUISANCES else NUISANCES
    nuisances = {name: draw_nuisance(rng, name, 2.0 if twice else 1.0, twice and kind in NUISANCES) for name in names}
    if "flow_meter" in faults:
        shape["meter"] = True
    plant = Plant(plan, off, nuisances)
    channels, written, facts = recorded(plan, plant, rng, shape, exact)
    file = f"{kind}-{seed}-{number}.csv"
    write_csv(folder / file, plan, channels, written, shape, exact)
    return {
        "name": f"{kind} {number}", "car": plan["number"], "file": file, "shape": shape,
        "truth": {"faults": told, "nuisances": nuisances, "off": off, "facts": facts}}, len(written)


def make(arguments):
    kinds = ["exact", "parts", "sound", "all", "two", "mix", *NUISANCES, *FAULTS]
    if arguments.kind not in kinds:
        sys.exit(f"KIND is {arguments.kind}; it must be one of {', '.join(kinds)}")
    if arguments.shape is not None and arguments.shape not in [*SHAPES, "drawn"]:
        sys.exit(f"--shape is {arguments.shape}; it must be one of drawn, {', '.join(SHAPES)}")
    folder = Path(arguments.folder)
    folder.mkdir(parents=True, exist_ok=True)
    cars = [invented_car(number, arguments.seed) for number in range(arguments.cars)]
    cases = [
        make_case(arguments.kind, number, arguments.seed, cars, arguments.twice, arguments.shape, folder) for number in range(arguments.count)]
    (folder / "cases.json").write_text(json.dumps({
        "kind": arguments.kind, "seed": arguments.seed, "twice": arguments.twice, "cars": cars, "cases": cases}), encoding="utf-8")


def main():
    parser = argparse.ArgumentParser(description="Makes recorded runs of invented cars.")
    sub = parser.add_subparsers(required=True)
    making = sub.add_parser("make")
    making.add_argument("kind")
    making.add_argument("count", type=int)
    making.add_argument("seed", type=int)
    making.add_argument("folder")
    making.add_argument("--twice", action="store_true")
    making.add_argument("--cars", type=int, default=10)
    making.add_argument("--shape")
    making.set_defaults(job=make)
    arguments = parser.parse_args()
    arguments.job(arguments)


if __name__ == "__main__":
    main()
