#!/usr/bin/env python3
"""Makes benches on which pumps, wiring, regulators and engines are measured: what was put in, and what instruments then read.

    bench_parts.py make COUNT FILE

Written from the definitions, sharing nothing with the library. COUNT of each part:

pump: flow falls with pressure by a curve of two terms, and grows with voltage; each reading sets pressure and voltage anew, and
    either misses a little; the pump's own flow scatters; a vessel is weighed full and empty, a clock is started and stopped by hand.
    All readings share the gauge's zero and span, the density of the liquid at an unknown temperature, and the scale's calibration.
wiring: U = R I; the voltmeter reads with noise and an offset, the ammeter with noise, both with a calibration.
regulator: rail = base + g0 min(b, o) + g max(0, b - o), with or without the slope of a returned flow; both gauges read with
    noise, a zero and a span.
engine: fuel = b P t; tank weighed before and after, clock by hand, power that scatters from run to run and a dynamometer whose
    calibration all runs share.
"""
import json
import random
import sys


def rounded(value, step):
    return round(value / step) * step if step > 0 else value


def pump(rng):
    free = rng.uniform(2e-5, 9e-5)                  # m3/s against nothing, at 13.5 V
    linear = rng.uniform(0.2, 0.5)                  # share of it lost at 600 kPa, two terms
    square = rng.uniform(0.02, 0.25)
    volts = rng.choice([[13.5], [12.0, 13.5]])
    by_voltage = rng.uniform(1.0, 1.6)
    rises = rng.choice([[0, 200e3, 400e3, 600e3], [0, 150e3, 300e3, 450e3, 600e3], [100e3, 300e3, 500e3]])
    repeats = rng.choice([2, 3, 4])

    def flow(rise, volt):
        x = rise / 600e3
        return free * (volt / 13.5) ** by_voltage * (1 - linear * x - square * x * x)

    density = 683.8
    scale = rng.choice([0.5e-3, 2e-3, 5e-3])        # kg
    clock = rng.choice([0.05, 0.1, 0.2])            # s
    seconds = rng.choice([20.0, 30.0, 60.0])
    setting = rng.choice([0.5e3, 1e3, 2e3])         # Pa, of setting a pressure by a gauge
    zero = rng.choice([0, 1e3, 3e3])
    span = rng.choice([0, 0.005, 0.01])
    thermal = rng.choice([0, 0.001, 0.002])         # density, as a share: 1 to 2 K
    calibration = rng.choice([0, 0.002, 0.004])
    own = rng.choice([0.001, 0.003, 0.006])         # the pump's, from reading to reading
    off_zero, off_span = rng.gauss(0, zero), rng.gauss(0, span)
    shared = (1 + rng.gauss(0, thermal)) * (1 + rng.gauss(0, calibration))

    readings, points = [], []
    for volt in volts:
        for rise in rises:
            points.append([rise, volt, flow(rise, volt)])
            for _ in range(repeats):
                # The gauge shows the rise that is set; what there is of it differs.
                there = (rise - off_zero - rng.gauss(0, setting)) / (1 + off_span) if rise > 0 else 0.0
                delivered = flow(there, volt) * (1 + rng.gauss(0, own))
                ran = seconds + rng.gauss(0, clock)
                mass = delivered * ran * density * shared + rng.gauss(0, scale)
                readings.append([rise, volt, rounded(mass, scale / 4), seconds])
    rng.shuffle(readings)
    return {"density": density, "scale": scale, "clock": clock, "setting": setting, "zero": zero, "span": span,
            "thermal": thermal, "calibration": calibration, "points": points, "readings": readings}


def wiring(rng):
    ohms = 10 ** rng.uniform(-2.5, -0.7)
    currents = rng.choice([[4, 8, 12, 16], [2, 5, 10], [0, 3, 6, 9, 12], [5, 10, 15, 20, 25]])
    repeats = rng.choice([2, 3, 4])
    meter = rng.choice([0.2e-3, 0.5e-3, 1e-3])
    offset = rng.choice([0, 0.2e-3, 1e-3])
    ammeter = rng.choice([0, 0.01, 0.05])
    calibration = rng.choice([0, 0.005, 0.01])
    off, shared = rng.gauss(0, offset), 1 + rng.gauss(0, calibration)
    readings = []
    for amperes in currents:
        for _ in range(repeats):
            true = amperes + (rng.gauss(0, ammeter) if amperes else 0)
            readings.append([amperes, ohms * true * shared + off + rng.gauss(0, meter)])
    rng.shuffle(readings)
    return {"ohms": ohms, "meter": meter, "offset": offset, "ammeter": ammeter, "calibration": calibration, "readings": readings}


def regulator(rng):
    base = rng.uniform(220e3, 400e3)
    gain = rng.uniform(1.5, 9)
    onset = rng.uniform(4e3, 40e3)
    follows = rng.random() < 0.7
    rail_noise = rng.choice([1e3, 2e3, 4e3])
    rail_zero = rng.choice([0, 1e3, 3e3])
    rail_span = rng.choice([0, 0.003, 0.008])
    noise = rng.choice([0.1e3, 0.3e3, 0.6e3])
    zero = rng.choice([0, 0.2e3, 0.5e3])
    span = rng.choice([0, 0.003, 0.008])
    slope = rng.choice([None, 0.0, 2e8, 6e8])       # Pa s/m3
    step = rng.choice([4e3, 5e3, 8e3])
    most = rng.uniform(55e3, 100e3)
    applied = [k * step for k in range(int(most / step) + 1)]
    applied += rng.choice([[], applied[::-1]])
    off_rail, off_rail_span = rng.gauss(0, rail_zero), rng.gauss(0, rail_span)
    off, off_span = rng.gauss(0, zero), rng.gauss(0, span)
    readings = []
    mean = 0.0
    flows = [rng.uniform(5e-6, 35e-6) for _ in applied]
    if slope is not None:
        mean = sum(flows) / len(flows)
    for shown, flow in zip(applied, flows):
        # The hand pump is worked until its gauge shows a figure; hose off is no pressure, whatever the gauge shows.
        there = (shown - off - rng.gauss(0, noise)) / (1 + off_span)
        rail = base + (1 if follows else 0) * min(there, onset) + gain * max(0.0, there - onset)
        rail += (slope or 0.0) * (flow - mean)
        rail = rail * (1 + off_rail_span) + off_rail + rng.gauss(0, rail_noise)
        readings.append([shown, rail] + ([flow] if slope is not None else []))
    return {"base": base, "gain": gain, "onset": onset, "follows": follows, "slope": slope,
            "rail": [rail_noise, rail_zero, rail_span], "applied": [noise, zero, span], "readings": readings}


def engine(rng):
    consumption = rng.uniform(240, 420) / 3.6e9     # kg/J
    power = rng.uniform(40e3, 250e3)
    scale = rng.choice([1e-3, 5e-3, 10e-3])
    seconds = max(rng.choice([30.0, 60.0, 120.0]), 15 * scale / (consumption * power))  # fifteen deviations of a weighing or more
    clock = rng.choice([0.1, 0.2, 0.5])
    steady = rng.choice([0.002, 0.005])             # power of one run
    calibration = rng.choice([0.005, 0.01, 0.02])
    own = rng.choice([0.0, 0.003, 0.008])           # the engine's, from run to run
    shared = 1 + rng.gauss(0, calibration)
    tank = rng.uniform(25, 40)
    readings = []
    for _ in range(rng.choice([3, 4, 6])):
        held = power * (1 + rng.uniform(-0.02, 0.02))
        ran = seconds + rng.gauss(0, clock)
        burnt = consumption * (1 + rng.gauss(0, own)) * held * ran
        readings.append([tank + rng.gauss(0, scale), tank - burnt + rng.gauss(0, scale), seconds, held * (1 + rng.gauss(0, steady)) * shared])
        tank -= burnt
    return {"consumption": consumption, "scale": scale, "clock": clock, "power": steady, "calibration": calibration, "readings": readings}


def main():
    if len(sys.argv) != 4 or sys.argv[1] != "make":
        sys.exit(__doc__)
    rng = random.Random(20261201)
    count = int(sys.argv[2])
    with open(sys.argv[3], "w", encoding="utf-8") as file:
        json.dump({part.__name__ + "s": [part(rng) for _ in range(count)] for part in (pump, wiring, regulator, engine)}, file)


main()
