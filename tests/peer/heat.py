"""Integrates the warming tanks of a file written by the library's tests a second time, and compares.

    heat.py FILE

Written from conservation of energy along the path of the fuel; of the library it shares the inputs and the circuits' flows, pressures, voltages and
currents. The method differs too. The library takes the share of all heat that returns, and closed forms of time; here the temperature is followed from
the tank through pump, rail, regulator and surge tank back, and the tank's balance is integrated step by step.
"""

import json
import math
import sys

from scipy.integrate import solve_ivp

KELVINS = 1e-6
LEAST = 40


def watts(circuit):
    return sum(pump["volts"] * pump["amperes"] for pump in circuit["pumps"])


class Path:
    """Temperatures along the path, over that of the main tank."""

    def __init__(self, case):
        main, lift = case["main"], case["lift"]
        capacity = case["density"] * case["specificHeat"]
        rise = main["rail"] - main["inlet"]
        injected = main["flow"] - main["returned"]
        through_rail = main["flow"] if case["layout"] == "Return" else injected

        # What the pump does not make pressure of it makes heat of.
        by_pump = (watts(main) - rise * main["flow"]) / (capacity * main["flow"])
        by_rail = case["pickupWatts"] / (capacity * through_rail)
        # The regulator makes heat of the pressure; in a returnless system before the rail.
        by_regulator = rise / capacity
        back = by_pump + by_regulator + (by_rail if case["layout"] == "Return" else 0)

        self.surge = 0.0
        if lift is not None:
            lifted = watts(lift) / (capacity * lift["flow"])
            if case["surge"] == "SurgeTank":
                # Mixed: (surge - lifted) * lift flow = back * returned flow, since what returns left the surge tank.
                self.surge = lifted + back * main["returned"] / lift["flow"]
            else:
                self.surge = lifted

        self.rail = self.surge + by_pump + by_rail
        self.flows = []
        if lift is None:
            self.flows.append((main["returned"], back))
        else:
            self.flows.append((lift["returned"], self.surge))
            if case["surge"] != "SurgeTank":
                self.flows.append((main["returned"], self.surge + back))
        self.capacity = capacity
        self.injected = injected


def warmed(case, path):
    walls = 0.0
    start = case["startKelvins"]
    if case["wallSquareMetres"] is None:
        # Of walls that nothing is known of the worst is taken: as warm as the air, and nothing lost.
        start = max(start, case["ambientKelvins"])
    else:
        walls = case["wallSquareMetres"] * case["wallCoefficient"]
    mass = case["litres"] / 1000 * case["densityInTank"]
    draw = path.injected * case["density"]

    def slope(time, state):
        left = (mass - draw * time) * case["specificHeat"]
        into = sum(path.capacity * flow * warmer for flow, warmer in path.flows)
        return [(into - walls * (state[0] - case["ambientKelvins"])) / left]

    solved = solve_ivp(slope, (0, case["seconds"]), [start], method="DOP853", rtol=1e-11, atol=1e-11)
    return solved.y[0][-1], 1000 * (mass - draw * case["seconds"]) / case["densityInTank"]


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        cases = json.load(file)
    worst = 0.0
    for number, case in enumerate(cases):
        path = Path(case)
        tank, litres = warmed(case, path)
        for name, here, there in (
                ("tank", tank, case["tankKelvins"]),
                ("inlet", tank + path.surge, case["inletKelvins"]),
                ("rail", tank + path.rail, case["railKelvins"]),
                ("litres left", litres, case["litresLeft"])):
            off = abs(here - there)
            worst = max(worst, off)
            if not off <= KELVINS or math.isnan(here):
                sys.exit(f"run {number}: {name} {here} here, {there} by the library")
    if len(cases) < LEAST:
        sys.exit(f"only {len(cases)} runs")
    print(f"{len(cases)} warming tanks agree within {worst:.1e} K")


if __name__ == "__main__":
    main()
