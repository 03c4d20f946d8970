"""Calculates points with two sets of injectors a second time, and compares.

    staged.py FILE

Written from the definitions of docs/staged-injectors.md; engine, fuel, injectors and dead times are those of mixtures.py. Of the library it
shares the inputs and nothing else. The library asks each set for the pulse of its share; here both sets are looked at as what is open for how
long: the hand-over is found from the time for which the primary set would have to be open, not from a flow.
"""

import json
import sys
from collections import Counter

from mixtures import Injector, System

AGREEMENT = 1e-9
LEAST = 150


class Set:
    """One set of injectors at a differential pressure: static flow of all, and the times of a cycle."""

    def __init__(self, injector, count, per_cycle, engine, differential, density, volts):
        self.one = injector.static(differential, density)
        self.all = self.one * count
        self.cycle = engine.revolutions / (engine.speed * per_cycle)
        self.dead, covered = injector.dead_time.at(volts, differential)
        if not covered:
            sys.exit("a dead time is not covered")

    def open_for(self, flow):
        """Time in each cycle for which each injector must be open."""
        return flow * self.cycle / self.all

    def pulse(self, flow):
        return self.dead + self.open_for(flow) if flow > 0 else 0


def share_of(data, primary, needed, boost):
    first, last = data["shareAtBegin"], data["share"]
    if data["beginPascals"] is not None:
        if boost <= data["beginPascals"]:
            return 0
        way = (boost - data["beginPascals"]) / (data["fullPascals"] - data["beginPascals"])
        return last if way >= 1 else first * (1 - way) + last * way
    held = data["beginDutyCycle"] * primary.cycle - primary.dead
    wanted = primary.open_for(needed)
    if wanted <= max(held, 0):
        return 0
    left_over = (wanted - max(held, 0)) / wanted
    return sorted((first, left_over, last))[1]


def answers(data):
    system = System(data["car"])
    engine, density, volts = system.engine, system.density, system.volts
    differential = system.differential(system.set)
    secondary = Injector(data["secondary"])
    first = Set(system.injector, data["car"]["injectors"], data["car"]["injectionsPerCycle"], engine, differential, density, volts)
    second = Set(secondary, data["secondaryInjectors"], data["secondaryInjectionsPerCycle"], engine, differential, density, volts)
    share = share_of(data, first, system.needed, data["car"]["boostPascals"])
    found = {"shareOfSecondary": share}
    for name, injector, own, flow, minimum in (
            ("primary", system.injector, first, system.needed * (1 - share), data["minimumPulses"][0]),
            ("secondary", secondary, second, system.needed * share, data["minimumPulses"][1])):
        found[name + "Flow"] = flow
        found[name + "Static"] = own.one
        found[name + "Pulse"] = own.pulse(flow)
        found[name + "Duty"] = own.pulse(flow) / own.cycle
        at_limit = max(0, data["dutyLimit"] * own.cycle - own.dead) * own.all / own.cycle
        rated, _ = injector.dead_time.at(minimum["volts"], injector.data["ratedPascals"])
        shortest = minimum["seconds"] - rated
        found[name + "Reserve"] = at_limit / flow - 1 if flow > 0 else None
        found[name + "Open"] = own.open_for(flow) / shortest - 1 if flow > 0 else None
    return found


def kind(data, share):
    over = "boost" if data["beginPascals"] is not None else "duty cycle"
    where = ("idle" if share == 0 else "at its full" if share == data["share"]
             else "at its begin" if share == data["shareAtBegin"] else "between")
    return f"by {over}, {where}"


def main(file):
    with open(file, encoding="utf-8") as text:
        points = json.load(text)
    if len(points) < LEAST:
        sys.exit(f"{len(points)} points; {LEAST} or more were expected")
    counts, worst, wrong = Counter(), (0, ""), 0
    for data in points:
        ours, theirs = answers(data), data["answers"]
        counts[kind(data, ours["shareOfSecondary"])] += 1
        for name, other in theirs.items():
            own = ours[name]
            if own is None or other is None:
                deviation = 0 if own is other else float("inf")
            else:
                deviation = abs(own - other) / max(abs(own), abs(other), 1 if "Reserve" in name or "Open" in name else 1e-30)
            if not deviation <= AGREEMENT:
                wrong += 1
                print(f"{data['name']}: {name} is {other} in the library, {own} here (off by {deviation:.3g})")
            elif deviation > worst[0]:
                worst = deviation, f"{name}, {data['name']}"
    print(", ".join(f"{count} {name}" for name, count in sorted(counts.items())))
    print(f"largest deviation {worst[0]:.2g} ({worst[1]})")
    if wrong:
        sys.exit(f"{wrong} figures do not agree")
    print(f"{len(points)} points with two sets of injectors agree within {AGREEMENT:g}")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: staged.py FILE")
    main(sys.argv[1])
