"""Calculates the second streams of a file written by the library's tests a second time, and compares.

    streams.py FILE

Written from the definitions of docs/second-stream.md and docs/equations.md; of the library it shares the inputs and nothing else. The main fuel
is calculated by mixtures.py. The method differs too: where a pump meets the nozzles the library looks for the pressure; here the flow is looked
for, and the pressure that the nozzles need for it is compared with the one at which the pump delivers it.
"""

import json
import math
import sys
from collections import Counter

from scipy.optimize import brentq

from circuits import Curve
from mixtures import GAMMA, GAS_CONSTANT, Efficiency, Fuel, System, air_density

AGREEMENT = 1e-9
LEAST = 150
FEWEST = 15
WATER = 999.1
WATER_HEAT = 2.442e6
CONTRACTION = 1.035


class Liquid:
    def __init__(self, data):
        self.fuel = Fuel(data["fuel"])
        share = data["fuelShare"]
        if data["isShareByVolume"]:
            fuel, water = share * self.fuel.reference, (1 - share) * WATER
            share = fuel / (fuel + water)
        self.share = share
        self.measured = data["densityAt15CKilogramsPerCubicMetre"]
        self.ratio = share * self.fuel.stoichiometric
        self.heat = share * data["heatingValueJoulesPerKilogram"]
        self.vaporisation = share * data["vaporisationJoulesPerKilogram"] + (1 - share) * WATER_HEAT

    def ideal(self, fuel):
        """Volumes add."""
        return 1 / (self.share / fuel + (1 - self.share) / WATER)

    def density(self, kelvins):
        warm = self.ideal(self.fuel.density(kelvins))
        if self.share == 1 or self.measured is None:
            return warm
        return self.measured * warm / self.ideal(self.fuel.reference)

    def heaviest(self, kelvins):
        unmeasured = self.measured is None and 0 < self.share < 1
        return self.density(kelvins) * (CONTRACTION if unmeasured else 1)


class Stream:
    def __init__(self, data):
        self.data = data
        self.main = data["main"]
        self.liquid = Liquid(data)
        boost = self.main["boostPascals"]
        self.back = boost if data["againstBoost"] else 0.0
        begin, full = data["beginPascals"], data["fullPascals"]
        self.flowing = 0.0 if boost < begin else 1.0 if full is None else min(1.0, (boost - begin) / (full - begin))
        self.held = data["heldPascals"]
        self.pump = data["pump"]
        self.curve = Curve(self.pump["curves"][0]) if self.pump else None

    def needs(self, flow, density):
        """Pressure across the nozzles for a flow through all of them."""
        data = self.data
        each = flow / data["nozzles"] / data["nozzleCubicMetresPerSecond"]
        return data["ratedPascals"] * each**2 * density / data["testFluidKilogramsPerCubicMetre"]

    def passes(self, pressure, density):
        data = self.data
        return data["nozzles"] * data["nozzleCubicMetresPerSecond"] * math.sqrt(
            max(0.0, pressure - self.back) / data["ratedPascals"] * data["testFluidKilogramsPerCubicMetre"] / density)

    def settle(self, density):
        """Pressure at the nozzles and the flow of the whole stream."""
        if self.curve is None:
            return self.held, self.passes(self.held, density)
        if self.held is not None and self.curve.flow(self.held) >= self.passes(self.held, density):
            return self.held, self.passes(self.held, density)
        delivers = self.curve.flow
        if self.curve.last <= self.back:
            return self.curve.last, 0.0
        flow = brentq(
            lambda tried: delivers(self.back + self.needs(tried, density)) - tried,
            0, self.passes(self.curve.last, density), xtol=1e-22, rtol=8.9e-16, maxiter=500)
        return self.back + self.needs(flow, density), flow

    def answers(self):
        data, main, liquid = self.data, self.main, self.liquid
        kelvins = main["fuelKelvins"]
        density = liquid.density(kelvins)
        pressure, whole = self.settle(density)
        flow = self.flowing * whole
        mass = flow * density
        heavy = liquid.heaviest(kelvins)
        heaviest = self.flowing * self.settle(heavy)[1] * heavy
        back = self.flowing * data["takenBackShare"]

        system = System(main)
        engine = system.engine
        given = main["engine"]
        ratio = engine.target * engine.fuel.stoichiometric
        specific_heat = GAMMA / (GAMMA - 1) * GAS_CONSTANT
        cooled = engine.charge - given["evaporationJoulesPerKilogram"] / ratio / specific_heat
        table = Efficiency(given["volumetricEfficiency"])
        drawn = engine.air(table, air_density(engine.manifold, cooled))
        dry = engine.air(table, air_density(engine.manifold, engine.charge))
        by_power = engine.power(given, air_density(engine.manifold, engine.charge)) * given["consumptionKilogramsPerJoule"]

        def required(air):
            return {"Air": air / ratio, "Power": by_power, "Larger": max(air / ratio, by_power)}[given["basis"]]

        evaporates = data["evaporatedShare"] * liquid.vaporisation * heaviest
        # Air goes with 1/T, and the heat comes out of the air that is drawn: ṁ' c (T - T') = heat with ṁ' T' = ṁ T.
        gain = 1 + evaporates / (specific_heat * cooled * drawn)
        without = required(dry) / required(drawn) if cooled < engine.charge else 1.0
        air = engine.burning

        ideal = main["controller"]["kind"] == "ideal"
        if ideal:
            engine.required = required(drawn * gain)
            system.needed = engine.required / system.density
        controller = system.controller
        plain = controller.pulse_for
        controller.pulse_for = lambda fuel, *rest: plain(fuel * (1 - back), *rest)
        ours = system.answers()
        main_mass = ours["delivered"] * system.density
        alone = engine.target / (1 - back) if ideal else engine.target * required(drawn) / main_mass

        def both(main_lambda, sprayed, breathed):
            return 1 / (1 / main_lambda + liquid.ratio * sprayed / breathed)

        acts = self.flowing > 0
        richest = alone if ideal else alone * without
        fuel = mass * liquid.share
        burnt = data["mainHeatingValueJoulesPerKilogram"] * main_mass
        return {
            "nozzlePascals": pressure if acts else None,
            "flowCubicMetresPerSecond": flow,
            "massKilogramsPerSecond": mass,
            "fuelKilogramsPerSecond": fuel,
            "mainKilogramsPerSecond": main_mass,
            "fuelFraction": fuel / (fuel + main_mass),
            "heatFraction": liquid.heat * mass / (burnt + liquid.heat * mass),
            "lambda": both(alone, mass, air) if acts else alone,
            "richestLambda": both(richest, heaviest, air * without) if acts else richest,
            "leanestLambda": gain * both(alone, mass, air) if acts else alone,
            "stoppedLambda": alone,
            "airGain": gain - 1 if acts else 0.0,
        }, ours

    def kinds(self, ours):
        data = self.data
        if self.flowing == 0:
            yield "none of it"
            return
        yield "all of it" if self.flowing == 1 else "part of it"
        if self.held is None:
            yield "a pump that runs free"
        elif self.curve is None:
            yield "held"
        else:
            yield "held by a pump that can" if ours["nozzlePascals"] == self.held else "a pump that cannot hold it"
        yield "with water" if self.liquid.share < 1 else "without water"
        yield "before the compressor" if not data["againstBoost"] else "into the manifold"
        if data["takenBackShare"] > 0:
            yield "taken back"
        if data["evaporatedShare"] > 0:
            yield "evaporates"
        kind = self.main["controller"]["kind"]
        yield kind + " pulses" if kind in ("ideal", "recorded") else "calculated pulses"


EVERY_KIND = [
    "none of it", "all of it", "part of it", "a pump that runs free", "held", "held by a pump that can", "a pump that cannot hold it", "with water",
    "without water", "before the compressor", "into the manifold", "taken back", "evaporates", "ideal pulses", "recorded pulses", "calculated pulses",
]


def deviation(theirs, ours):
    if theirs is None or ours is None:
        return 0.0 if theirs is ours else math.inf
    return abs(theirs - ours) / max(abs(theirs), abs(ours), 1e-30)


def main(file):
    with open(file, encoding="utf-8") as text:
        streams = json.load(text)
    counts, wrong, largest = Counter(), 0, (0.0, "")
    for data in streams:
        stream = Stream(data)
        ours, main_fuel = stream.answers()
        counts.update(stream.kinds(ours))
        # A gain of almost nothing has few digits of its own: it is compared as a share of the air.
        rows = [(name, value, ours[name], deviation(value, ours[name])) for name, value in data["answers"].items() if name != "airGain"]
        rows.append(("airGain", data["answers"]["airGain"], ours["airGain"], abs(data["answers"]["airGain"] - ours["airGain"])))
        name, other, own, off = max(rows, key=lambda row: row[3])
        if not (off <= AGREEMENT and main_fuel.get("explicit")):
            wrong += 1
            print(f"{data['main']['name']}: {name} is {other} in the library, {own} here (off by {off:.3g})")
        elif off > largest[0]:
            largest = off, f"{name}, {data['main']['name']}"
    print(", ".join(f"{counts[kind]} {kind}" for kind in EVERY_KIND))
    print(f"largest deviation {largest[0]:.2g} ({largest[1]})")
    if wrong:
        sys.exit(f"{wrong} of {len(streams)} second streams do not agree")
    if len(streams) < LEAST:
        sys.exit(f"only {len(streams)} second streams")
    rare = [kind for kind in EVERY_KIND if counts[kind] < FEWEST]
    if rare:
        sys.exit(f"fewer than {FEWEST} each: {', '.join(rare)}")
    print(f"{len(streams)} second streams agree within {AGREEMENT:g}")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: streams.py FILE")
    main(sys.argv[1])
