"""Solves circuits that a surge tank joins a second time, and compares.

    tanks.py FILE

As circuits.py, of whose pumps and lines it makes use: every unknown of both circuits is found at once, by Newton's method on all equations
together. The library solves one circuit within the other. The surge tank is one curve in a parameter w too: below 0 its level falls, from 0
on fuel stands in an overflow line that rises, and beyond that it overflows.
"""

import json
import math
import sys

import numpy as np

from circuits import Assembly, Circuit, way_loss

AGREEMENT = 1e-7


class Joined:
    def __init__(self, data):
        self.data = data
        self.main = Circuit(data["main"])
        self.lift = Assembly(data["liftPump"], None, None)
        self.supply = data["main"]["supplyVolts"]
        self.free = self.lift.free_flow(self.supply)
        self.column = max(0, self.loss("overflow", 0))
        self.counts = len(self.main.assembly.pumps), len(self.lift.pumps)

    def loss(self, way, flow):
        return way_loss(
            self.data[way], flow,
            self.data["main"]["densityKilogramsPerCubicMetre"],
            self.data["main"]["kinematicViscositySquareMetresPerSecond"])

    def tank(self, w):
        """Flow that the tank gains or loses, what overflows, and the pressure in it."""
        if w < 0:
            return w * self.free, 0, 0
        if self.column > 0 and w < 1:
            return 0, 0, w * self.column
        over = (w - 1 if self.column > 0 else w) * self.free
        return 0, over, max(self.column, self.loss("overflow", over))

    def side(self, assembly, points, volts, gaps):
        return assembly.outside(
            [pump.outside(t, max(share, 0.02) * self.supply) for pump, t, share in zip(assembly.pumps, points, volts)], gaps)

    def equations(self, unknowns):
        main, lift = self.counts
        places = np.split(unknowns, np.cumsum([main, main, lift, lift, 1]))
        main_points, main_volts, lift_points, lift_volts, (w,), (u,) = places
        level, over, pressure = self.tank(w)
        gaps = []
        rise, flow = self.side(self.main.assembly, main_points, main_volts, gaps)
        open_ends = [gap / (self.main.set if kind == "rise" else self.main.free) for kind, gap in gaps]
        gaps = []
        lift_rise, lifted = self.side(self.lift, lift_points, lift_volts, gaps)
        scale = max(2e4, self.column)
        open_ends += [gap / (scale if kind == "rise" else self.free) for kind, gap in gaps]
        for assembly, points, volts in (
                (self.main.assembly, main_points, main_volts), (self.lift, lift_points, lift_volts)):
            open_ends += [
                pump.voltage_gap(t, max(share, 0.02) * self.supply, self.supply) / self.supply
                for pump, t, share in zip(assembly.pumps, points, volts)]
        returned = max(u, 0) * self.main.free
        end = pressure if self.data["returnsToSurgeTank"] else 0
        held = self.main.set * (1 + u) if u < 0 else max(self.main.set, self.main.loss("back", returned) + end)
        open_ends.append((rise + pressure - self.main.to_regulator(flow) - held) / self.main.set)
        open_ends.append((flow - self.main.injected - returned) / self.main.free)
        drawn = flow - (returned if self.data["returnsToSurgeTank"] else 0)
        open_ends.append((lift_rise - self.loss("liftSuction", lifted) - self.loss("liftLine", lifted) - pressure) / scale)
        open_ends.append((lifted - drawn - over - level) / self.free)
        self.found = {
            "tankPascals": pressure,
            "liftedCubicMetresPerSecond": lifted,
            "drawnCubicMetresPerSecond": drawn,
            "overflowCubicMetresPerSecond": over,
            "liftInletPascals": -self.loss("liftSuction", lifted),
            "liftOutletPascals": pressure + self.loss("liftLine", lifted),
            "mainCubicMetresPerSecond": flow,
            "returnedCubicMetresPerSecond": returned,
            "railPascals": held,
            "inletPascals": pressure - self.main.loss("suction", flow),
            "outletPascals": held + self.main.loss("supply", flow),
        }
        return np.array(open_ends)

    def answers(self):
        main, lift = self.counts
        scatter = np.random.default_rng(1)
        for width in np.linspace(0, 1, 300):
            start = np.concatenate([
                0.6 + 2 * width * scatter.uniform(-0.6, 0.6, main),
                0.92 + 0.08 * width * scatter.uniform(-1, 1, main),
                0.4 + 2 * width * scatter.uniform(-0.6, 0.6, lift),
                0.92 + 0.08 * width * scatter.uniform(-1, 1, lift),
                0.3 + 2 * width * scatter.uniform(-1, 1, 1),
                0.3 + width * scatter.uniform(-1, 1, 1)])
            unknowns = Circuit.newton(self.equations, start)
            if unknowns is not None:
                self.equations(unknowns)
                return self.found
        raise ArithmeticError(f"{self.data['name']}: no solution found")


def deviation(joined, name, theirs, own):
    # Below this a number is nothing: a thousandth of what flows or presses in these circuits at most.
    floor = 1e-3 * (joined.free if "CubicMetres" in name else joined.main.set)
    return abs(theirs - own) / max(abs(theirs), abs(own), floor)


def main(file):
    with open(file, encoding="utf-8") as text:
        tanks = json.load(text)
    if not tanks:
        sys.exit("no tanks to compare")
    largest, where, wrong, full = 0, "", 0, 0
    for data in tanks:
        joined = Joined(data)
        try:
            own = joined.answers()
        except ArithmeticError as problem:
            wrong += 1
            print(problem)
            continue
        full += own["overflowCubicMetresPerSecond"] > 0
        name = max(own, key=lambda one: deviation(joined, one, data["answers"][one], own[one]))
        off = deviation(joined, name, data["answers"][name], own[name])
        if not off <= AGREEMENT:
            wrong += 1
            print(f"{data['name']}: {name} is {data['answers'][name]} in the library, {own[name]} here (off by {off:.3g})")
        if off > largest or math.isnan(off):
            largest, where = off, f"{name}, {data['name']}"
    closing = f"(largest deviation {largest:.2g}: {where})"
    print(f"{full} of {len(tanks)} tanks overflow")
    if wrong:
        sys.exit(f"{wrong} of {len(tanks)} joined circuits do not agree within 1e-7 {closing}")
    print(f"{len(tanks)} joined circuits agree within 1e-7 {closing}")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: tanks.py FILE")
    main(sys.argv[1])
