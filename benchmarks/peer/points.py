"""The open-form chain in NumPy. Reads the inputs that the benchmarks wrote, then runs once for each line it is sent and
answers with the seconds of processor time it took, so that both sides are timed in turns on one machine."""
import json
import sys
import time

import numpy as np

with open(sys.argv[1], encoding="utf-8") as file:
    given = json.load(file)
c = given["Constants"]
points = int(given["Points"])
data = np.fromfile(given["Columns"]).reshape(2, points)
speed, boost = data[0].copy(), data[1].copy()
efficiency, power = (np.array(given[name]).reshape(5, 8) for name in ("Efficiency", "Power"))
dead = np.array(given["DeadTimes"]).reshape(2, 8)
dead = dead[:, np.isfinite(dead[0])]


def mean_friction(n):
    return 97e3 + 900 * n + 18 * n * n


def cubic(table, x):
    k = np.searchsorted(table[0], x, side="right") - 1
    s = x - table[0][k]
    return table[1][k] + s * (table[2][k] + s * (table[3][k] + s * table[4][k]))


def run():
    gas, heats = 287.05287, 1.4
    manifold = c["Ambient"] + boost
    ratio = np.maximum(1, (manifold + c["CoolerLoss"]) / c["Ambient"])
    outlet = c["Temperature"] * (1 + (np.exp((heats - 1) / heats * np.log(ratio)) - 1) / c["Compressor"])
    charge = outlet - c["Cooler"] * (outlet - c["Temperature"])
    air = cubic(efficiency, speed) * (manifold / (gas * charge)) * c["Displacement"] * speed / c["Revolutions"]
    dense = manifold / charge * c["MeasuredTemperature"] / c["MeasuredPressure"]
    measured = cubic(power, speed)
    friction = c["Friction"] * speed * mean_friction(speed) / (c["FrictionSpeed"] * mean_friction(c["FrictionSpeed"]))
    gross = np.maximum(0, (measured + friction) * dense - friction)
    fuel = np.maximum(air / (c["Lambda"] * c["AirFuel"]), gross * c["Bsfc"]) / c["Density"]
    rail = np.minimum(
        c["Ceiling"], c["Base"] + c["GainBelow"] * np.minimum(boost, c["Onset"]) + c["Gain"] * np.maximum(0, boost - c["Onset"]))
    across = rail + c["Ambient"] - manifold
    flow = c["RatedFlow"] * np.sqrt(np.maximum(0, across) / c["RatedPressure"] * c["TestDensity"] / c["Density"])
    available = c["Revolutions"] / (speed * c["Injections"])
    duty = (np.interp(across, dead[0], dead[1]) + fuel / c["Count"] * available / flow) / available
    return rail, fuel, flow, duty


if len(sys.argv) > 2:
    np.concatenate(run()).tofile(sys.argv[2])
run()
print("ready", np.__version__, flush=True)
for line in sys.stdin:
    repeats = int(line)
    start = time.thread_time()
    for _ in range(repeats):
        run()
    print(repr(time.thread_time() - start), flush=True)
