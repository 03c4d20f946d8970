"""Calculates the mixtures of a file written by the library's tests a second time, and compares.

    mixtures.py FILE

Written from the definitions of docs/mixture.md, the equations of docs/equations.md and docs/circuit.md; of the library it shares the
inputs and nothing else. The method differs too. The library looks for the flow that is injected; here everything is a function of the
rise over the pump: it says the flow that passes, that the pressure in the rail, that what the injectors take, and one equation is
left, what comes less what is taken and what returns.
"""

import json
import math
import sys
from collections import Counter

import numpy as np
from scipy.interpolate import PchipInterpolator, interp1d
from scipy.optimize import brentq

from circuits import Pump, way_loss

# Where the rail does not depend on what is injected, and where both search.
EXPLICIT, SEARCHED = 1e-9, 1e-7
LEAST = 20

GAS_CONSTANT = 287.05287
GAMMA = 1.4
REFERENCE_KELVINS = 288.15
CARBON, HYDROGEN, OXYGEN = 0.012011, 0.001008, 0.015999
OXYGEN_IN_AIR = 0.2314
# A table's end, reached through other units, may differ in the last digit.
END = 1e-9


def root_of(function, low, high, xtol=1e-14):
    return brentq(function, low, high, xtol=xtol * max(abs(low), abs(high)), rtol=8.9e-16, maxiter=500)


def air_density(pressure, kelvins):
    return pressure / (GAS_CONSTANT * kelvins)


def within(value, first, last):
    """A value, or the nearest end of a table; the second says whether the table covers it."""
    inside = min(max(value, first), last)
    return inside, abs(value - inside) <= END * (last - first)


class Fuel:
    """Volumes add: density and expansion by volume, elements by mass, logarithm of viscosity by volume."""

    def __init__(self, parts):
        volumes = [part["volumeShare"] for part in parts]
        masses = [part["volumeShare"] * part["densityAt15CKilogramsPerCubicMetre"] for part in parts]

        def mixed(shares, values):
            return sum(share * value for share, value in zip(shares, values)) / sum(shares)

        def by(shares, name):
            return mixed(shares, [part[name] for part in parts])

        oxygen = (
            2 * OXYGEN / CARBON * by(masses, "carbonShare")
            + 2 * OXYGEN / (4 * HYDROGEN) * by(masses, "hydrogenShare")
            - by(masses, "oxygenShare"))
        self.stoichiometric = oxygen / OXYGEN_IN_AIR
        self.reference = by(volumes, "densityAt15CKilogramsPerCubicMetre")
        self.expansion = by(volumes, "expansionAt15CPerKelvin")
        self.viscosity = [mixed(volumes, [part["viscosityLaw"][name] for part in parts]) for name in "abc"]

    def density(self, kelvins):
        warmer = self.expansion * (kelvins - REFERENCE_KELVINS)
        return self.reference * math.exp(-warmer * (1 + 0.8 * warmer))

    def kinematic(self, kelvins):
        a, b, c = self.viscosity
        return math.exp(a + b / kelvins + c * math.log(kelvins)) / self.density(kelvins)


class DeadTime:
    """Monotone over voltage, straight over pressure; a table of one row without a pressure holds at all of them."""

    def __init__(self, rows):
        self.volts = rows[0]["volts"]
        self.pressures = [row["differentialPascals"] for row in rows]
        self.rows = [PchipInterpolator(row["volts"], row["seconds"]) for row in rows]

    def at(self, volts, pressure):
        """Dead time where the table is nearest, and whether it covers the place."""
        volts, covered = within(volts, self.volts[0], self.volts[-1])
        times = [float(row(volts)) for row in self.rows]
        if len(times) == 1:
            return times[0], covered
        pressure, reached = within(pressure, self.pressures[0], self.pressures[-1])
        upper = next(row for row in range(1, len(times)) if self.pressures[row] >= pressure)
        low, high = self.pressures[upper - 1], self.pressures[upper]
        share = (pressure - low) / (high - low)
        return times[upper - 1] + share * (times[upper] - times[upper - 1]), covered and reached


class Injector:
    def __init__(self, data):
        self.data = data
        self.dead_time = DeadTime(data["deadTime"])
        self.lowest = data["lowestPascals"]

    def rating(self, differential):
        """Flow at the rated pressure that the square-root law gives through the points measured around a pressure, straight between them."""
        of, points = self.data, self.data["measured"]
        if not points:
            return of["staticCubicMetresPerSecond"]
        pascals = [point["pascals"] for point in points]
        ratings = [point["cubicMetresPerSecond"] * math.sqrt(of["ratedPascals"] / point["pascals"]) for point in points]
        return float(np.interp(differential, pascals, ratings))

    def static(self, differential, density):
        of = self.data
        return self.rating(differential) * math.sqrt(
            max(0, differential) / of["ratedPascals"] * of["testFluidKilogramsPerCubicMetre"] / density)


class Efficiency:
    """Volumetric efficiency over speed; beyond its speeds its ends hold."""

    def __init__(self, points):
        self.speeds = [point["revolutionsPerSecond"] for point in points]
        self.curve = PchipInterpolator(self.speeds, [point["share"] for point in points])

    def at(self, speed):
        return float(self.curve(within(speed, self.speeds[0], self.speeds[-1])[0]))


class Engine:
    """What the engine takes and needs at the point."""

    def __init__(self, data, point):
        speed, ambient = point["speedRevolutionsPerSecond"], point["ambientPascals"]
        self.revolutions = data["strokes"] / 2
        self.speed = speed
        self.displacement = data["displacementCubicMetres"]
        self.fuel = Fuel(data["fuel"])
        self.target = data["targetLambda"]
        self.manifold = ambient + point["boostPascals"]
        kelvins = point["ambientKelvins"]
        ratio = max(1, (self.manifold + data["coolerLossPascals"]) / ambient)
        outlet = kelvins * (1 + (ratio ** ((GAMMA - 1) / GAMMA) - 1) / data["compressorEfficiency"])
        coolant = kelvins if data["coolantKelvins"] is None else data["coolantKelvins"]
        self.charge = outlet - data["coolerEffectiveness"] * (outlet - coolant)
        density = air_density(self.manifold, self.charge)
        ratio = self.target * self.fuel.stoichiometric
        evaporated = self.charge - data["evaporationJoulesPerKilogram"] / ratio / (GAMMA / (GAMMA - 1) * GAS_CONSTANT)
        by_air = self.air(Efficiency(data["volumetricEfficiency"]), air_density(self.manifold, evaporated)) / ratio
        by_power = self.power(data, density) * data["consumptionKilogramsPerJoule"]
        self.required = {"Air": by_air, "Power": by_power, "Larger": max(by_air, by_power)}[data["basis"]]
        self.burning = self.required * self.target * self.fuel.stoichiometric

    def air(self, efficiency, density):
        return efficiency.at(self.speed) * density * self.displacement * self.speed / self.revolutions

    def load(self, air):
        full = air_density(101325, 288.15) * self.displacement
        return air * self.revolutions / self.speed / full

    def power(self, data, density):
        points = data["wheelPower"]
        measured = PchipInterpolator(
            [point["revolutionsPerSecond"] for point in points],
            [point["watts"] / (1 - data["drivetrainLoss"]) for point in points])
        stated = data["mechanicalEfficiencyRevolutionsPerSecond"]

        def shape(speed):
            return speed * (97000 + 900 * speed + 18 * speed**2)

        friction = float(measured(stated)) * (1 / data["mechanicalEfficiency"] - 1) * shape(self.speed) / shape(stated)
        denser = density / air_density(data["measuredAirPascals"], data["measuredAirKelvins"])
        return max(0, (float(measured(self.speed)) + friction) * denser - friction)


class Controller:
    """The pulse for a pressure across the injector. Without data to say it from, none."""

    loop = None
    past_sensor = False
    follows_rail = False

    def __init__(self, data, point, engine, fitted, count, cycle):
        self.data, self.point, self.engine = data, point, engine
        self.fitted, self.count, self.cycle = fitted, count, cycle
        self.volts = point["supplyVolts"]
        self.actual_density = engine.fuel.density(point["fuelKelvins"])

    def pulse_for(self, fuel, injector, differential, density, volts, longest):
        """Dead time and the time that a fuel, kg/s, takes; cut off at the longest pulse; and whether it was."""
        static = injector.static(differential, density)
        dead, _ = injector.dead_time.at(volts, differential)
        pulse = dead + fuel / density / self.count * self.cycle / static if static > 0 else math.inf
        return min(pulse, longest), pulse > longest


class Ideal(Controller):
    follows_rail = True

    def pulse(self, differential, trim=1):
        return self.pulse_for(self.engine.required, self.fitted, differential, self.actual_density, self.volts, self.cycle)


class Calculating(Controller):
    def __init__(self, *arguments):
        super().__init__(*arguments)
        data, engine = self.data["data"], self.engine
        self.believed = data
        self.injector = Injector(data["injector"])
        self.follows_rail = data["correctsForRailPressure"]
        sensor = data["hasEthanolSensor"]
        calibrated = Fuel(data["fuel"])
        self.density = self.actual_density if sensor else calibrated.density(data["fuelKelvins"])
        air, self.past_sensor = self.air()
        table = data["target"]
        if len(table) == 1:
            self.aim = table[0]["lambda"]
        else:
            loads = [each["load"] for each in table]
            self.aim = float(interp1d(loads, [each["lambda"] for each in table])(
                within(engine.load(air), loads[0], loads[-1])[0]))
        self.wanted = air / (self.aim * (engine.fuel if sensor else calibrated).stoichiometric)
        limit = data["closedLoopManifoldPascals"]
        if limit is not None and engine.manifold <= limit:
            self.loop = data["closedLoopAuthority"]

    def air(self):
        data, engine, point = self.data, self.engine, self.point
        if data["kind"] == "meter":
            end = math.inf if data["endKilogramsPerSecond"] is None else data["endKilogramsPerSecond"]
            return min(engine.burning, end), engine.burning > end
        efficiency = Efficiency(data["volumetricEfficiency"])
        if data["kind"] == "speed-density":
            kelvins = engine.charge if data["fixedChargeKelvins"] is None else data["fixedChargeKelvins"]
            pressure = min(engine.manifold, data["endPascals"])
            return engine.air(efficiency, air_density(pressure, kelvins)), engine.manifold > data["endPascals"]
        ambient = point["ambientPascals"] if data["hasBarometer"] else data["calibratedPascals"]
        kelvins = point["ambientKelvins"] if data["hasAirTemperature"] else data["calibratedKelvins"]
        pressure = ambient * min(1, engine.manifold / point["ambientPascals"])
        return engine.air(efficiency, air_density(pressure, kelvins)), False

    def pulse(self, differential, trim=1):
        data = self.believed
        return self.pulse_for(
            trim * self.wanted, self.injector,
            differential if self.follows_rail else data["differentialPascals"],
            self.density,
            self.volts if data["fixedVolts"] is None else data["fixedVolts"],
            data["maximumDutyCycle"] * self.cycle)


class Recorded(Controller):
    def __init__(self, *arguments):
        super().__init__(*arguments)
        data = self.data
        self.recorded = self.between(data["revolutionsPerSecond"], self.engine.speed, [
            [row[at] for row in data["pulsesSeconds"]] for at in range(len(data["revolutionsPerSecond"]))])
        if data["manifoldPascals"] and self.recorded is not None:
            self.recorded = self.between(data["manifoldPascals"], self.engine.manifold, self.recorded)
        elif self.recorded is not None:
            self.recorded = self.recorded[0]
        if data["deadTime"] is not None and self.recorded is not None:
            table = DeadTime(data["deadTime"])
            self.recorded += (
                table.at(self.volts, data["deadTimePascals"])[0] - table.at(data["recordedVolts"], data["deadTimePascals"])[0])

    @staticmethod
    def between(places, at, values):
        at, covered = within(at, places[0], places[-1])
        return interp1d(places, values, axis=0)(at) if covered else None

    def pulse(self, differential, trim=1):
        return (None if self.recorded is None else float(self.recorded)), False


class System:
    def __init__(self, data):
        self.data = data
        self.engine = Engine(data["engine"], data)
        self.injector = Injector(data["injector"])
        self.cycle = self.engine.revolutions / (self.engine.speed * data["injectionsPerCycle"])
        kind = {"ideal": Ideal, "recorded": Recorded}.get(data["controller"]["kind"], Calculating)
        self.controller = kind(
            data["controller"], data, self.engine, self.injector, data["injectors"], self.cycle)
        self.density = self.controller.actual_density
        self.needed = self.engine.required / self.density
        self.volts = data["supplyVolts"]
        self.pump = Pump(data["pump"], True)
        self.viscosity = self.engine.fuel.kinematic(data["fuelKelvins"])
        boost = data["boostPascals"]
        self.set = max(
            min(
                math.inf if unit["ceilingPascals"] is None else unit["ceilingPascals"],
                unit["basePascals"]
                + unit["gainBelowOnset"] * min(boost, unit["onsetPascals"])
                + unit["gain"] * max(0, boost - unit["onsetPascals"]))
            for unit in data["regulator"])

    # Injection

    def differential(self, rail):
        return rail + self.data["ambientPascals"] - self.engine.manifold

    def delivered(self, rail, pulse):
        differential = self.differential(rail)
        most = self.injector.static(differential, self.density) * self.data["injectors"]
        if pulse >= self.cycle:
            return most
        dead, _ = self.injector.dead_time.at(self.volts, differential)
        return most * max(0, pulse - dead) / self.cycle

    def with_trim(self, rail, trim):
        return self.delivered(rail, self.controller.pulse(self.differential(rail), trim)[0])

    def trimmed(self, rail):
        """What a lambda sensor multiplies the fuel by with this pressure in the rail."""
        authority = self.controller.loop
        if authority is None:
            return 1
        goal = self.needed * self.engine.target / self.controller.aim
        if self.with_trim(rail, 1 + authority) <= goal:
            return 1 + authority
        if self.with_trim(rail, 1 - authority) >= goal:
            return 1 - authority
        return root_of(lambda trim: self.with_trim(rail, trim) - goal, 1 - authority, 1 + authority)

    def taken(self, rail):
        return self.with_trim(rail, self.trimmed(rail))

    # Circuit

    def loss(self, way, flow):
        return way_loss(self.data[way], flow, self.density, self.viscosity)

    def passed(self, rise):
        """Flow through the pump against a rise, with the voltage that its feed leaves."""
        volts = self.volts
        if self.pump.ohms > 0:
            volts = root_of(
                lambda motor: self.volts - self.pump.ohms * self.pump.current(rise, motor) - motor, 0.3 * self.volts, self.volts)
        return 0.0 if rise > self.pump.end(volts) else max(0.0, self.pump.flow(max(rise, 0), volts))

    def at_regulator(self, rise, flow):
        """Pressure before the regulator, which sits at the rail or at the pump."""
        ways = self.loss("suction", flow)
        return rise - ways - (self.loss("supply", flow) if self.data["layout"] == "Return" else 0)

    def fed(self, held):
        """Pressure in the rail and what the injectors take with a pressure before the regulator; and whether all of it is needed to feed them."""
        if self.data["layout"] == "Return" or not self.data["supply"]:
            return (held, self.taken(held), False) if held > 0 else (0.0, self.taken(0.0), True)
        if held <= 0:
            return 0.0, 0.0, True  # Nothing drives it through the line.

        def short(rail):
            return held - rail - self.loss("supply", self.taken(rail))

        if short(0.0) <= 0:
            most = self.taken(0.0)
            return 0.0, root_of(lambda flow: held - self.loss("supply", flow), 0, most) if short(0.0) < 0 else most, True
        rail = root_of(short, 0.0, held)
        return rail, self.taken(rail), False

    def settle(self):
        """State, pressure in the rail and the flow to it."""
        def spare(rise):
            flow = self.passed(rise)
            return flow - self.fed(self.at_regulator(rise, flow))[1]

        def held(rise):
            return self.at_regulator(rise, self.passed(rise))

        last = self.pump.end(self.volts)
        # The rise at which the pressure before the regulator is as set; the pressure falls with the flow.
        if held(last) > self.set:
            at_set = root_of(lambda rise: held(rise) - self.set, 0, last)
            flow = self.passed(at_set)
            rail, taken, short = self.fed(self.set)
            if flow >= taken:
                if short:
                    return "Starved", rail, taken
                if self.loss("back", flow - taken) <= self.set:
                    returned = flow - taken
                    state = "Regulated" if returned >= self.data["minimumReturnCubicMetresPerSecond"] else "AtRegulatorLimit"
                    return state, rail, taken

                def backed(rise):
                    passing = self.passed(rise)
                    before = self.at_regulator(rise, passing)
                    return before - self.loss("back", max(0, passing - self.fed(before)[1]))

                self.count_roots(backed, at_set, last)
                rise = root_of(backed, at_set, last)
                rail, taken, _ = self.fed(held(rise))
                return "ReturnFloor", rail, taken
            last = at_set
        start = root_of(held, 0, last) if held(0) < 0 else 0.0
        if self.data["layout"] == "Return" or not self.data["supply"]:
            # Nothing gets to a rail whose pressure would be below zero but what the pump passes against none.
            most = self.passed(start)
            if self.taken(0.0) >= most:
                return "Starved", 0.0, most
        self.count_roots(spare, start, last)
        rise = root_of(spare, start, last)
        rail, taken, short = self.fed(held(rise))
        return ("Starved" if short else "Sagging"), rail, taken

    roots = 1

    def count_roots(self, function, low, high, places=40):
        values = [function(low + (high - low) * place / places) for place in range(places + 1)]
        self.roots = sum(a * b < 0 or b == 0 for a, b in zip(values, values[1:]))

    # Answers

    def answers(self):
        none = {"state": None, "lambda": None, "pulse": None, "delivered": None, "rail": None, "loop": None}
        if self.controller.pulse(3e5)[0] is None:
            return none
        state, rail, delivered = self.settle()
        differential = self.differential(rail)
        trim = self.trimmed(rail)
        if state == "Starved" and self.controller.loop is not None:
            # The sensor sees what is really burnt.
            goal = self.needed * self.engine.target / self.controller.aim
            trim = 1 + self.controller.loop if delivered < goal else trim
        pulse, cut = self.controller.pulse(differential, trim)
        # Injectors that a pulse holds open are never closing: no dead time is asked of them. An ideal pulse is made by that dead time, unless the
        # fuel alone takes the cycle.
        most = self.injector.static(differential, self.density) * self.data["injectors"]
        timed = pulse < self.cycle or isinstance(self.controller, Ideal) and self.needed < most
        unknown = (0 < differential < self.injector.lowest
                   or timed and not self.injector.dead_time.at(self.volts, differential)[1])
        value = math.inf if delivered <= 0 else self.engine.target * self.needed / delivered
        return {
            "state": state,
            "lambda": None if unknown else value,
            "pulse": pulse,
            "delivered": None if unknown else delivered,
            "rail": rail,
            "loop": trim,
            "held": pulse >= self.cycle,
            "cut": cut,
            "explicit": state in ("Regulated", "AtRegulatorLimit")
            and (self.data["layout"] == "Return" or not self.data["supply"]),
        }


def kinds(system, ours):
    """What a system counts as, by what is found here."""
    data = system.data["controller"]
    kind = data["kind"]
    known = ours["lambda"] is not None
    past = system.controller.past_sensor
    if kind == "ideal":
        yield "ideal"
    elif kind == "speed-density":
        yield "speed-density past its end" if past else "speed-density within its end"
    elif kind == "throttle":
        yield "throttle with barometer" if data["hasBarometer"] else "throttle without barometer"
        yield "throttle with air temperature" if data["hasAirTemperature"] else "throttle without air temperature"
    elif kind == "meter":
        yield "meter at its end" if past else "meter within its range"
    else:
        over = "over manifold pressure" if data["manifoldPascals"] else "over speed"
        yield f"recorded {over}, {'uncorrected' if data['deadTime'] is None else 'corrected'}"
    if known or ours["state"] == "Starved":
        yield {"Regulated": "regulated", "AtRegulatorLimit": "at the regulator's limit", "ReturnFloor": "return floor",
               "Sagging": "sagging", "Starved": "starved"}[ours["state"]]
    if not known:
        yield "lambda not known"
    if ours["pulse"] is not None and ours["held"]:
        yield "held open"
    if ours["pulse"] is not None and ours["cut"] and not ours["held"]:
        yield "cut off by the duty limit"
    if "data" in data:
        believed = data["data"]
        if believed["correctsForRailPressure"]:
            yield "rail-pressure correction"
        if believed["fixedVolts"] is not None:
            yield "fixed voltage"
        if system.controller.loop is not None and known:
            at_limit = abs(abs(ours["loop"] - 1) - system.controller.loop) < 1e-9
            yield "closed loop at its limit" if at_limit else "closed loop within its authority"
        if len(system.data["engine"]["fuel"]) > 1:
            yield "ethanol sensor on a blend" if believed["hasEthanolSensor"] else "blend without a sensor"
    if system.data["injectionsPerCycle"] == 2:
        yield "two injections a cycle"
    if system.data["engine"]["strokes"] == 2:
        yield "two-stroke"


EVERY_KIND = [
    "ideal", "speed-density within its end", "speed-density past its end", "throttle with barometer", "throttle without barometer",
    "throttle with air temperature", "throttle without air temperature", "meter at its end", "meter within its range",
    "recorded over speed, corrected", "recorded over speed, uncorrected", "recorded over manifold pressure, corrected",
    "recorded over manifold pressure, uncorrected", "regulated", "sagging", "starved", "return floor", "held open",
    "cut off by the duty limit", "rail-pressure correction", "fixed voltage", "closed loop within its authority",
    "closed loop at its limit", "ethanol sensor on a blend", "blend without a sensor", "two injections a cycle", "two-stroke",
    "lambda not known",
]


def deviations(theirs, ours):
    """Yields name, both values and the relative deviation of every answer."""
    for name, key in [
            ("lambda", "lambda"), ("delivered flow", "deliveredCubicMetresPerSecond"), ("pulse", "pulseSeconds"), ("rail", "railPascals")]:
        own, other = ours[name.split()[0]], theirs[key]
        other = math.inf if other == "infinite" else other
        if name in ("pulse", "rail") and ours["lambda"] is None:
            continue  # Where data has ended, neither is an answer.
        if own is None or other is None or math.isinf(own) or math.isinf(other):
            yield name, other, own, 0 if own == other else math.inf
        else:
            yield name, other, own, abs(own - other) / max(abs(own), abs(other), 1e-30)


def main(file):
    with open(file, encoding="utf-8") as text:
        systems = json.load(text)
    if not systems:
        sys.exit("no systems to compare")
    counts, wrong, explicit = Counter(), 0, 0
    largest = {True: (0, ""), False: (0, "")}
    for data in systems:
        system = System(data)
        ours, theirs = system.answers(), data["answers"]
        counts.update(kinds(system, ours))
        both = bool(ours.get("explicit")) and theirs["state"] in ("Regulated", "AtRegulatorLimit")
        explicit += both and ours["lambda"] is not None
        rows = list(deviations(theirs, ours))
        if ours["state"] is not None and ours["lambda"] is not None and ours["state"] != theirs["state"]:
            rows.append(("state", theirs["state"], ours["state"], math.inf))
        name, other, own, deviation = max(rows, key=lambda row: row[3])
        if not deviation <= (EXPLICIT if both else SEARCHED):
            wrong += 1
            print(f"{data['name']}: {name} is {other} in the library, {own} here (off by {deviation:.3g};"
                  f" {theirs['state']}, here {ours['state']}, {system.roots} places)")
        elif deviation > largest[both][0]:
            largest[both] = deviation, f"{name}, {data['name']}"
    print(", ".join(f"{counts[kind]} {kind}" for kind in EVERY_KIND))
    rare = [kind for kind in EVERY_KIND if counts[kind] < LEAST]
    for explicit_ones, what in [(True, "rail as set"), (False, "rail searched")]:
        print(f"{what}: largest deviation {largest[explicit_ones][0]:.2g} ({largest[explicit_ones][1]})")
    if wrong:
        sys.exit(f"{wrong} of {len(systems)} mixtures do not agree")
    if rare:
        sys.exit(f"fewer than {LEAST} each: {', '.join(rare)}")
    print(f"{len(systems)} mixtures agree: {explicit} with the rail as set within {EXPLICIT:g}, the others within {SEARCHED:g}")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: mixtures.py FILE")
    main(sys.argv[1])
