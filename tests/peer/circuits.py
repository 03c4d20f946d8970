"""Solves the circuits of a file written by the library's tests a second time, and compares.

    circuits.py FILE [AGREEMENT]

AGREEMENT is the largest relative deviation that still counts as agreement, 0.001 if it is not given.

It shares the inputs with the library and nothing else: SciPy interpolates, finds roots and gives standard gravity; the
equations are written here from their sources. The method differs too. The library nests brackets: voltage in pump, pump
in assembly, assembly in circuit. Here every unknown of a circuit is found at once, by Newton's method on all equations
together.

What makes that possible is to write each thing that switches (relief valve, check valve, by-pass, regulator, speed
controller) as one curve in a parameter that runs over all its branches, so that no case has to be guessed beforehand.
"""

import json
import math
import sys
from collections import Counter

import numpy as np
from scipy.constants import g
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, root

AGREEMENT = 1e-3
# Newton's method is done when no equation is left open by more than this share of its scale.
RESIDUAL = 1e-10
# A shut valve leaks this share, lest the pressures behind two shut valves in a row be left open.
LEAK = 1e-9


def darcy_factor(reynolds, relative_roughness):
    """Hagen-Poiseuille up to Re 2040, Colebrook-White from 4000, and between them f Re blended by s^2 (3 - 2 s)."""

    def colebrook_white(x):
        return x + 2 * math.log10(relative_roughness / 3.7 + 2.51 * x / reynolds)

    laminar = 64 / reynolds
    if reynolds <= 2040:
        return laminar
    turbulent = brentq(colebrook_white, 1, 40, xtol=1e-14, rtol=1e-14) ** -2
    s = min(1, (reynolds - 2040) / (4000 - 2040))
    return laminar + s * s * (3 - 2 * s) * (turbulent - laminar)


def way_loss(way, flow, density, viscosity):
    """Pressure lost along a way, heights included; odd in the flow, since Newton's method may try a negative one."""
    loss = 0
    for part in way:
        if part["kind"] == "filter":
            loss += (
                part["cloggingFactor"] * part["ratedLossPascals"]
                * flow / part["ratedFlowCubicMetresPerSecond"]
                * density * viscosity / part["ratedViscosityPascalSeconds"]
            )
            continue
        if part["kind"] == "checkValve":
            loss += part["openingPascals"]
            if part["lossCoefficient"] is not None:
                speed = flow / (math.pi * part["boreMetres"]**2 / 4)
                loss += part["lossCoefficient"] * density * speed * abs(speed) / 2
            else:
                x = abs(flow) / part["ratedFlowCubicMetresPerSecond"] * math.sqrt(density / part["ratedDensityKilogramsPerCubicMetre"])
                loss += math.copysign((part["ratedLossPascals"] - part["openingPascals"]) * max(x, x**2), flow)
            continue
        bore = part["boreMetres"]
        speed = abs(flow) / (math.pi * bore**2 / 4)
        loss += density * g * part["riseMetres"]
        if speed > 0:
            factor = darcy_factor(speed * bore / viscosity, part["roughnessMetres"] / bore)
            heads = factor * part["lengthMetres"] / bore + part["lossCoefficientSum"]
            loss += math.copysign(heads * density * speed**2 / 2, flow)
    return loss


class Curve:
    def __init__(self, data):
        self.volts = data["volts"]
        rises, flows, currents = data["risesPascals"], data["flowsCubicMetresPerSecond"], data["currentsAmperes"]
        self.first, self.last = rises[0], rises[-1]
        self.first_flow = flows[0]
        self.open = flows[-1] > 1e-6 * flows[0]
        self._flow = PchipInterpolator(rises, flows)
        self._current = PchipInterpolator(rises, currents) if currents else None

    def flow(self, rise):
        if rise > self.last * (1 + 1e-12):
            return 0.0
        return float(self._flow(min(max(rise, self.first), self.last)))

    def current(self, rise):
        return float(self._current(min(max(rise, self.first), self.last))) if self._current else None


class Pump:
    """One pump, by its parameter t and the voltage at its motor.

    t < 0      it passes more than its free flow: through a by-pass, or, without one, not at all
    0 to 1     it runs on its curve
    1 to 2     it holds its highest pressure, whatever it passes: relief valve, or a curve that ends there
    t > 2      its check valve is shut against a higher pressure
    """

    def __init__(self, data, bypassed):
        self.curves = [Curve(curve) for curve in data["curves"]]
        self.ohms = data["feedOhms"]
        self.relief = data["reliefPascals"] or math.inf
        self.condition = data["conditionFraction"]
        self.bypassed = bypassed
        self.share = data["supplyFraction"]
        self.resistor = data["resistorOhms"]
        self.converter = data["converter"]
        self.shared = data["shared"]

    def _around(self, volts):
        """The measured curves on either side of a voltage, each with its share and the speed that it is carried to."""
        volts = min(volts, self.curves[-1].volts)
        below = [curve for curve in self.curves if curve.volts < volts][-1:]
        above = [curve for curve in self.curves if curve.volts >= volts][:1]
        if not below or not above:
            return [(curve, 1.0, volts / curve.volts) for curve in below or above]
        share = (volts - below[0].volts) / (above[0].volts - below[0].volts)
        return [(below[0], 1 - share, volts / below[0].volts), (above[0], share, volts / above[0].volts)]

    def _read(self, volts, of, power, rise):
        """Each neighbour carried by the affinity laws, then in proportion; above the highest unchanged."""
        total = 0.0
        for curve, share, speed in self._around(volts):
            value = of(curve, rise / speed**2)
            if value is None:
                return None
            total += share * value * speed**power
        return total

    def flow(self, rise, volts):
        return self.condition * self._read(volts, Curve.flow, 1, rise)

    def current(self, rise, volts):
        return self._read(volts, Curve.current, 2, rise)

    def curve_end(self, volts):
        # A measured voltage that is met has its own curve alone: the other, carried there, may end higher.
        return max(curve.last * speed**2 for curve, share, speed in self._around(volts) if share > 0)

    def end(self, volts):
        return min(self.curve_end(volts), self.relief)

    def outside(self, t, volts):
        """Rise over the pump with its valves, and the flow through them."""
        end = self.end(volts)
        if t < 0:
            free = self.flow(0, volts)
            return (LEAK * end * t, free * (1 - t)) if self.bypassed else (end * t, free * (1 - LEAK * t))
        if t <= 1:
            return end * t, self.flow(end * t, volts)
        # A hair below the end, so as not to land behind the jump.
        at_end = self.flow(end * (1 - 1e-13), volts)
        if t <= 2:
            return end * (1 + LEAK * (t - 1)), at_end * (2 - t)
        return end * (t - 1 + LEAK), -LEAK * self.flow(0, volts) * (t - 2)

    def inside(self, t, volts):
        """Rise and flow of the pump itself."""
        rise, flow = self.outside(t, volts)
        return min(max(rise, 0), self.end(volts)), min(max(flow, 0), self.flow(0, volts))

    def voltage_gap(self, t, volts, supply):
        supply *= self.share
        ohms = self.ohms + self.resistor
        if self.converter is not None:
            rise, _ = self.inside(t, volts)
            return self.spare(volts, self.current(rise, volts), supply)
        if ohms == 0:
            return supply - volts
        rise, _ = self.inside(t, volts)
        return supply - ohms * self.current(rise, volts) - volts

    def drawn(self, power, supply):
        """Current at the converter's input for a power at its output: the lower of the two that the feed passes it with; none passes it all."""
        wanted = power / self.converter["efficiencyFraction"]
        if self.ohms == 0:
            return wanted / supply
        most = supply / (2 * self.ohms)
        passed = lambda current: (supply - self.ohms * current) * current - wanted
        return brentq(passed, 0, most, xtol=1e-14) if passed(most) >= 0 else None

    def spare(self, volts, current, supply):
        """How far the converter could raise the motor's voltage; less than nothing where it cannot hold it."""
        drawn = self.drawn(volts * current, supply)
        if drawn is None:
            return -volts
        held = self.converter["heldVolts"]
        given = held if held is not None else self.converter["multiple"] * (supply - self.ohms * drawn)
        limit = self.converter["limitAmperes"]
        return min(given - volts, (limit / current - 1) * volts if limit is not None else math.inf)

    def full(self, supply):
        """The highest voltage that the motor may get."""
        if self.converter is None:
            return self.share * supply
        held = self.converter["heldVolts"]
        return held if held is not None else self.converter["multiple"] * supply

    def feed_current(self, current, volts, supply):
        return current if self.converter is None or current is None else self.drawn(volts * current, supply)

    def running(self, t, supply):
        """Voltage at the motor where t is known."""
        full = self.full(supply)
        if self.voltage_gap(t, full, supply) >= 0:
            return full
        return brentq(lambda volts: self.voltage_gap(t, volts, supply), 0.05 * supply, full, xtol=1e-13)

    def free_flow(self, supply):
        return self.flow(0, self.running(0, supply))

    def choked(self, flow, supply):
        """The parameter at which no more than a flow passes."""
        def spare(t):
            return self.outside(t, self.running(t, supply))[1] - flow

        return 0.0 if spare(0) <= 0 else brentq(spare, 0, 2, xtol=1e-13)

    def uncovered(self, t, volts, governed):
        """True where the measured data says nothing of the point."""
        rise, _ = self.inside(t, volts)
        if volts < 0.7 * self.curves[0].volts:
            return True
        around = self._around(volts)
        if any(rise < curve.first * speed**2 for curve, _, speed in around):
            return True
        # Under a regulator a curve that ends early still gives the least flow.
        return not governed and t > 1 and self.curve_end(volts) < self.relief and any(curve.open for curve, _, _ in around)


class Assembly:
    """Pumps in any nesting."""

    def __init__(self, data, density, viscosity):
        self.pumps = []
        self.chains = []
        self.liquid = density, viscosity
        self.tree = self._grow(data, True)

    def _grow(self, data, bypassed):
        if data["kind"] == "branch":
            return "branch", [self._grow(data["members"][0], bypassed)], (data["suction"], data["discharge"])
        if data["kind"] != "pump":
            # A pump that is switched off lets nothing through: its check valve is shut, or one round it is open.
            members = [member for member in data["members"] if not self._is_off(member)]
            if len(members) == 1:
                return self._grow(members[0], bypassed)
            data = {**data, "members": members}
        if data["kind"] == "pump":
            self.pumps.append(Pump(data, bypassed))
            return len(self.pumps) - 1
        open_round = data["kind"] != "series" or data["bypass"] == "CheckValve"
        first = len(self.pumps)
        members = [self._grow(member, open_round) for member in data["members"]]
        if not open_round:
            self.chains.append(range(first, len(self.pumps)))
        return data["kind"], members, open_round

    def _is_off(self, data):
        return data["supplyFraction"] == 0 if data["kind"] == "pump" else all(self._is_off(member) for member in data["members"])

    def outside(self, points, gaps, node=None):
        """Rise and flow of the whole; adds to gaps what its members disagree on."""
        node = self.tree if node is None else node
        if isinstance(node, int):
            return points[node]
        kind, members, own = node
        if kind == "branch":
            # Behind its own lines it gives so much less; the valve that shuts is its pump's.
            rise, flow = self.outside(points, gaps, members[0])
            return rise - sum(way_loss(way, flow, *self.liquid) for way in own), flow
        rises, flows = zip(*(self.outside(points, gaps, member) for member in members))
        if kind == "series":
            gaps += [("flow", flow - flows[0]) for flow in flows[1:]]
            return sum(rises), flows[0]
        gaps += [("rise", rise - rises[0]) for rise in rises[1:]]
        return rises[0], sum(flows)

    def behind_trunks(self, supply, drawn):
        """The supply of each pump: less by what a trunk takes that it shares, for the sum of what hangs on it (Kirchhoff's current law)."""
        sums = Counter()
        for pump, current in zip(self.pumps, drawn):
            if pump.shared is not None:
                sums[pump.shared["name"]] += current
        return [
            supply - (pump.shared["ohms"] * sums[pump.shared["name"]] if pump.shared is not None else 0)
            for pump in self.pumps]

    def unpressed_supplies(self, supply):
        """The supply of each pump while all of them work against nothing: each trunk's splice by itself."""
        supplies = [supply] * len(self.pumps)
        trunks = {pump.shared["name"]: pump.shared["ohms"] for pump in self.pumps if pump.shared is not None}
        for name, ohms in trunks.items():
            on = [place for place, pump in enumerate(self.pumps) if pump.shared is not None and pump.shared["name"] == name]

            def over(splice):
                return splice - supply + ohms * sum(self.pumps[place].current(0, self.pumps[place].running(0, splice)) for place in on)

            splice = supply if ohms == 0 else brentq(over, 0.3 * supply, supply, xtol=1e-13)
            for place in on:
                supplies[place] = splice
        return supplies

    def ends(self, points, inside, inlet, node=None):
        """Flow through a node, what its pumps add in a row, the lowest pressure before a pump and the highest behind one."""
        node = self.tree if node is None else node
        if isinstance(node, int):
            rise, flow = inside[node]
            return flow, rise, inlet, inlet + rise
        kind, members, own = node
        if kind == "branch":
            flow = max(0, self.outside(points, [], members[0])[1])
            flow = 0 if flow < 1e-7 * self.pumps[0].flow(0, self.pumps[0].curves[-1].volts) else flow
            _, rise, low, high = self.ends(points, inside, inlet - way_loss(own[0], flow, *self.liquid), members[0])
            return flow, rise, low, high
        if kind == "series":
            lows, highs, total = [], [], 0
            for member in members:
                flow, rise, low, high = self.ends(points, inside, inlet + total, member)
                lows.append(low)
                highs.append(high)
                total += rise
            return flow, total, min(lows), max(highs)
        each = [self.ends(points, inside, inlet, member) for member in members]
        return sum(one[0] for one in each), max(one[1] for one in each), min(one[2] for one in each), max(one[3] for one in each)

    def free_flow(self, supply, node=None, supplies=None):
        supplies = self.unpressed_supplies(supply) if supplies is None else supplies
        node = self.tree if node is None else node
        if isinstance(node, int):
            return self.pumps[node].free_flow(supplies[node])
        kind, members, open_round = node
        flows = [self.free_flow(supply, member, supplies) for member in members]
        if kind == "branch":
            return flows[0]  # No more than that: a scale, and no circuit here asks for so much.
        return sum(flows) if kind == "parallel" else max(flows) if open_round else min(flows)


class Regulator:
    """What it holds by what returns through it and by the pressure at its outlet; of two in series the outlet of one is the inlet of the other."""

    def __init__(self, data):
        self.pair = (Regulator(data["upstream"]), Regulator(data["downstream"])) if "upstream" in data else None
        if self.pair:
            return
        self.set, self.share = data["setPascals"], data["outletShare"]
        self.slope, self.stated = data["slopePascalsByCubicMetresPerSecond"], data["statedCubicMetresPerSecond"]
        flows, self.curve = data["curveCubicMetresPerSecond"], None
        if flows:
            self.first, self.last = flows[0], flows[-1]
            self.curve = PchipInterpolator(flows, data["curvePascals"])

    def held(self, returned, outlet):
        if self.pair:
            upstream, downstream = self.pair
            between = max(downstream.held(returned, outlet), outlet)
            return max(upstream.held(returned, between), between)
        rise = self.slope * (returned - self.stated)
        if self.curve:
            rise = float(self.curve(min(max(returned, self.first), self.last)) - self.curve(self.stated))
        return self.set + rise + self.share * outlet

    def stated_setting(self):
        if not self.pair:
            return self.set
        upstream, downstream = self.pair
        between = downstream.stated_setting()
        return max(upstream.set + upstream.share * max(between, 0), between)


class Circuit:
    def __init__(self, data):
        self.data = data
        self.assembly = Assembly(
            data["pump"], data["densityKilogramsPerCubicMetre"], data["kinematicViscositySquareMetresPerSecond"])
        self.set = self.as_set = data["setPascals"]
        self.regulator = Regulator(data["regulator"]) if data.get("regulator") else None
        self.supply = data["supplyVolts"]
        self.lowest = data["minimumSupplyVolts"]
        self.injected = data["injectedCubicMetresPerSecond"]
        self.free = self.assembly.free_flow(self.supply)
        self.at_rail = data["layout"] == "Return" or self.lowest is not None

    def loss(self, way, flow):
        return way_loss(
            self.data.get(way, []), flow,
            self.data["densityKilogramsPerCubicMetre"], self.data["kinematicViscositySquareMetresPerSecond"])

    def governor(self, u):
        """Voltage fed, returned flow and pressure held, by one parameter: below 0 shut, above 0 returning.

        A speed controller has its lowest voltage below 0, the full supply above 1.
        """
        if self.regulator is not None:
            returned = max(u, 0) * self.free
            back = self.loss("back", returned)
            held = max(self.regulator.held(returned, back), back)
            return self.supply, returned, held * (1 + min(u, 0))
        if self.lowest is None:
            return (self.supply, 0, self.set * (1 + u)) if u < 0 else (
                self.supply, u * self.free, max(self.set, self.loss("back", u * self.free)))
        slowest = min(self.lowest, self.supply)
        held = self.set * (1 - min(u, 0) - max(u - 1, 0))
        return slowest + min(max(u, 0), 1) * (self.supply - slowest), 0, held

    def judged_by(self):
        """Pressure that the pumps are judged by: as set, or what the regulator holds at its minimum return where that is more."""
        if self.regulator is None or self.set != self.as_set:
            return self.set
        least = self.data["minimumReturnCubicMetresPerSecond"]
        return max(self.regulator.stated_setting(), self.regulator.held(least, self.loss("back", least)))

    def governs(self, returned, back):
        return self.set if self.regulator is None else self.regulator.held(returned, back)

    def to_regulator(self, flow):
        return self.loss("suction", flow) + self.behind_pumps(flow)

    def behind_pumps(self, flow):
        """Lost between the pumps and the regulator: in the supply, or before a regulator that sits before the rail."""
        return self.loss("supply" if self.at_rail else "toRegulator", flow)

    def equations(self, unknowns, at_set=False):
        count = len(self.assembly.pumps)
        # Voltages are kept off zero, where nothing is defined; no solution lies there.
        volts = [max(share, 0.02) * self.supply for share in unknowns[count:2 * count]]
        fed, returned, held = (self.supply, 0, self.judged_by()) if at_set else self.governor(unknowns[-1])
        pairs = list(zip(self.assembly.pumps, unknowns, volts))
        gaps = []
        rise, flow = self.assembly.outside([pump.outside(t, v) for pump, t, v in pairs], gaps)
        scales = {"rise": self.set, "flow": self.free}
        open_ends = [gap / scales[kind] for kind, gap in gaps]
        drawn = [pump.current(pump.inside(t, v)[0], v) if pump.shared is not None else 0 for pump, t, v in pairs]
        open_ends += [
            pump.voltage_gap(t, v, given) / self.supply
            for (pump, t, v), given in zip(pairs, self.assembly.behind_trunks(fed, drawn))]
        open_ends.append((rise - self.to_regulator(flow) - held) / self.set)
        if not at_set:
            open_ends.append((flow - self.injected - returned) / self.free)
        return np.array(open_ends)

    def solve(self, at_set=False):
        count = len(self.assembly.pumps)
        # The first start is in the middle of everything; those after it scatter ever wider over all branches.
        scatter = np.random.default_rng(1)
        for width in np.linspace(0, 1, 200):
            start = np.concatenate([
                0.6 + 2.8 * width * scatter.uniform(-0.6, 1, count),
                0.92 + 0.08 * width * scatter.uniform(-1, 1, count),
                0.3 + width * scatter.uniform(-1, 1, 1)])
            found = self.newton(
                lambda unknowns: self.equations(unknowns, at_set), start[:2 * count] if at_set else start)
            if found is not None:
                return found
        raise ArithmeticError(f"{self.data['name']}: no solution found")

    def unpressed(self):
        """The pumps with as good as no pressure in the rail: so many pascals, which scale the pressures too, as a start finds it."""
        for self.set in (1, 10, 100):
            try:
                return self.solve(at_set=True)
            except ArithmeticError as error:
                last = error
        raise last

    @staticmethod
    def newton(equations, start):
        found = root(equations, start, method="hybr", options={"xtol": 1e-14, "maxfev": 600})
        return found.x if np.max(np.abs(equations(found.x))) < RESIDUAL else None

    def answers(self):
        least = max(0, self.flow(self.solve(at_set=True)))
        # More than the pumps pass against nothing has no solution, and needs none.
        unknowns = None if self.injected >= self.free else self.solve()
        fed, returned, held = self.governor(unknowns[-1]) if unknowns is not None else (self.supply, 0, 0)
        rail = held if self.at_rail else held - self.loss("supply", self.injected)
        shut = unknowns is None or (unknowns[-1] < 0 if self.lowest is None else unknowns[-1] > 1)
        if unknowns is None or rail <= 0:
            # What gets to a rail without pressure: as if a regulator there were set to next to nothing; one at the tank that is open stays so.
            opened = unknowns is not None and not shut and not self.at_rail
            state, rail, back = "Starved", 0, 0
            if opened:
                flow, outlet = self.flow(unknowns), held
                delivered = brentq(lambda passed: self.loss("supply", passed) - held, 0, self.injected)
            else:
                self.at_rail = True
                unknowns = self.unpressed()
                delivered = flow = min(self.injected, self.flow(unknowns))
                outlet = self.loss("supply", flow)
            returned = flow - delivered
            inlet = -self.loss("suction", flow)
        else:
            flow = self.flow(unknowns)
            back = self.loss("back", returned)
            state = (
                "Sagging" if shut
                else "PumpFloor" if self.lowest is not None and unknowns[-1] < 0
                else "Regulated" if self.lowest is not None
                else "ReturnFloor" if back > self.governs(returned, back)
                else "AtRegulatorLimit" if returned < self.data["minimumReturnCubicMetresPerSecond"]
                else "Regulated")
            inlet = -self.loss("suction", flow)
            outlet = held + self.behind_pumps(flow)
        described = self.described(unknowns, fed)
        governed = state in ("Regulated", "AtRegulatorLimit", "ReturnFloor")
        if any(pump.uncovered(t, volts, governed) for pump, t, volts, _ in described):
            state, flow, returned = "NotCovered", None, None
        lowest, highest = self.pump_ends(unknowns, inlet, outlet)
        return {
            "state": state,
            "railPascals": rail,
            "inletPascals": inlet,
            "outletPascals": outlet,
            "lowestInletPascals": lowest,
            "highestOutletPascals": highest,
            "backPascals": back,
            "pumpCubicMetresPerSecond": flow,
            "returnedCubicMetresPerSecond": returned,
            "fedVolts": fed,
            "minimumAtSetCubicMetresPerSecond": least,
            "pumps": [answer for *_, answer in described],
        }

    def pump_ends(self, unknowns, inlet, outlet):
        """Lowest pressure before a pump and highest behind one: the circuit's own where no pump has lines of its own."""
        if "branch" not in json.dumps(self.data["pump"]) or unknowns is None:
            return inlet, outlet
        count = len(self.assembly.pumps)
        pairs = [(pump, t, share * self.supply) for pump, t, share in zip(self.assembly.pumps, unknowns, unknowns[count:2 * count])]
        _, _, low, high = self.assembly.ends(
            [pump.outside(t, volts) for pump, t, volts in pairs], [pump.inside(t, volts) for pump, t, volts in pairs], inlet)
        return low, max(high, outlet)

    def flow(self, unknowns):
        count = len(self.assembly.pumps)
        return self.assembly.outside([
            pump.outside(t, share * self.supply)
            for pump, t, share in zip(self.assembly.pumps, unknowns, unknowns[count:2 * count])], [])[1]

    def described(self, unknowns, fed):
        """Each pump; where there is no solution, with all that it can pass."""
        count = len(self.assembly.pumps)
        rows = []
        for index, pump in enumerate(self.assembly.pumps):
            if unknowns is None:
                # A stage that nothing goes round is held up by the weakest one of its chain.
                chain = next((chain for chain in self.assembly.chains if index in chain), [index])
                weakest = min(self.assembly.pumps[stage].free_flow(fed) for stage in chain)
                t = pump.choked(weakest, fed)
                volts = pump.running(t, fed)
            else:
                t, volts = unknowns[index], unknowns[count + index] * self.supply
            rise, flow = pump.inside(t, volts)
            rows.append((pump, t, volts, {
                "risePascals": rise,
                "flowCubicMetresPerSecond": flow,
                "motorVolts": volts,
                "currentAmperes": pump.current(rise, volts),
                "feedAmperes": pump.feed_current(pump.current(rise, volts), volts, fed),
            }))
        return rows

    def floor(self, name):
        """Below this a number is nothing: a thousandth of what flows or presses in this circuit at most."""
        return 1e-3 * (self.free if "CubicMetres" in name else self.set if "Pascals" in name else 1)


def deviations(circuit, theirs, ours, path=""):
    """Yields name, both values and the relative deviation of every answer."""
    for name, own in ours.items():
        other = theirs[name]
        if name == "pumps":
            if ours["state"] == theirs["state"] == "NotCovered":
                continue  # The library publishes nothing of them.
            if len(own) != len(other):
                yield path + name, len(other), len(own), math.inf
            for number, pair in enumerate(zip(other, own), 1):
                yield from deviations(circuit, *pair, f"pump {number} ")
        elif isinstance(own, str) or own is None or other is None:
            yield path + name, other, own, 0 if own == other else math.inf
        else:
            scale = max(abs(own), abs(other), circuit.floor(name))
            yield path + name, other, own, abs(own - other) / scale


def main(file, agreement):
    with open(file, encoding="utf-8") as text:
        circuits = json.load(text)
    if not circuits:
        sys.exit("no circuits to compare")
    largest, where, wrong, states = 0, "", 0, Counter()
    for data in circuits:
        circuit = Circuit(data)
        try:
            rows = list(deviations(circuit, data["answers"], circuit.answers()))
        except ArithmeticError as problem:
            wrong += 1
            print(problem)
            continue
        states[data["answers"]["state"]] += 1
        name, theirs, ours, deviation = max(rows, key=lambda row: row[3])
        if not deviation <= agreement:
            wrong += 1
            print(f"{data['name']}: {name} is {theirs} in the library, {ours} here (off by {deviation:.3g})")
        if deviation > largest:
            largest, where = deviation, f"{name}, {data['name']}"
    print(", ".join(f"{count} {state}" for state, count in sorted(states.items())))
    closing = f"(largest deviation {largest:.2g}: {where})"
    if wrong:
        sys.exit(f"{wrong} of {len(circuits)} circuits do not agree within {agreement:.2g} {closing}")
    print(f"{len(circuits)} circuits agree within {agreement:.2g} {closing}")


if __name__ == "__main__":
    if len(sys.argv) not in (2, 3):
        sys.exit("usage: circuits.py FILE [AGREEMENT]")
    main(sys.argv[1], float(sys.argv[2]) if len(sys.argv) == 3 else AGREEMENT)
