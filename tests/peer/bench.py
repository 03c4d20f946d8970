#!/usr/bin/env python3
"""Makes benches on which injectors are weighed: what was put in, and what a scale then reads.

    bench.py make COUNT FILE
    bench.py pairs COUNT FILE

The second weighs each injector twice, at two voltages on one day: the calibration is that of the day, the offset longer at the lower voltage.

Written from the definitions, sharing nothing with the library. An injector delivers in a pulse of t seconds

    m(t) = s (t - x)                    where it has time to open fully,
    m(t) = s (t - x) (1 - d(t))         at shorter pulses, d(t) = 0.05 exp(-(t - e)/w): 5 % at t = e, the end of its linear flow range.

A bench adds: a clock whose resolution moves each width it sets, a temperature that moves from reading to reading, drops left in
the vessel and the scale's own error and resolution with each weighing; and what all readings share, the scale's and the gauge's calibration.

Held open the same injector passes q in each second. A hand starts and stops: late by what it always is, and by a little more or less each time.
"""
import json
import math
import random
import sys


def injector(rng):
    slope = rng.uniform(2.5e-3, 14e-3)          # kg/s
    offset = rng.uniform(0.6e-3, 1.8e-3)        # s
    end = offset + rng.uniform(0.35e-3, 0.9e-3)
    return slope, offset, end


def bench(rng, made=None, day=None):
    slope, offset, end = made or injector(rng)
    width = rng.uniform(0.04e-3, 0.10e-3)
    pulses = rng.choice([500, 1000, 1500, 2000])
    scale = rng.choice([0.005e-3, 0.01e-3, 0.02e-3])    # kg, of a weighing: reading and drops
    resolution = scale / rng.choice([1, 2, 5])
    clock = rng.choice([0, 0.25e-6, 0.5e-6])            # s, of one setting
    kelvin = rng.choice([0, 0.2, 0.4])                  # from reading to reading
    calibration = rng.choice([0, 0.001, 0.003, 0.006])
    shared = 1 + rng.gauss(0, calibration)
    if day:
        calibration, shared = day

    step = rng.choice([0.1e-3, 0.15e-3, 0.2e-3])
    short = [end + (k - 3 + rng.random()) * step for k in range(0, 9)]
    short = [t for t in short if t > offset + 0.15e-3]
    long = [short[-1] + (k + 1) * rng.choice([0.8e-3, 1e-3, 1.5e-3]) for k in range(rng.randint(3, 6))]
    repeats = rng.choice([1, 2, 3])
    readings = []
    for t in short + sorted(long):
        t = round(t, 6)
        for _ in range(repeats):
            at = t + rng.gauss(0, clock)
            short_of = 0.05 * math.exp(-(at - end) / width)
            each = slope * (at - offset) * (1 - min(short_of, 0.999))
            each *= 1 - 0.0006 * rng.gauss(0, kelvin)       # density and viscosity, of a typical test liquid
            total = each * pulses * shared + rng.gauss(0, scale)
            readings.append([t, pulses, max(0.0, round(total / resolution) * resolution)])
    return {
        "slope": slope,
        "offset": offset,
        "end": end,
        "scale": scale,
        "calibration": calibration,
        "shared": shared,
        "readings": readings,
    }


def held_open(rng):
    flow = rng.uniform(150, 900) * 1e-6 / 60            # m³/s
    density = rng.uniform(680, 790)                     # kg/m³
    by_mass = rng.random() < 0.5
    hand = rng.uniform(-0.3, 0.5)                       # s, in each collecting alike
    clock = rng.choice([0.02, 0.05, 0.1])               # s, of one collecting
    scale = rng.choice([0.02e-3, 0.1e-3]) if by_mass else rng.choice([0.5e-6, 1e-6])    # kg or m³
    calibration = rng.choice([0, 0.002, 0.005])
    shared = 1 + rng.gauss(0, calibration)
    short = rng.choice([10, 15, 20])
    times = [short] * rng.randint(2, 4) + [short * rng.choice([2, 3])] * rng.randint(2, 4)
    readings = []
    for t in times:
        volume = flow * (t + hand + rng.gauss(0, clock)) * shared
        readings.append([t, (volume * density if by_mass else volume) + rng.gauss(0, scale)])
    return {
        "flow": flow,
        "density": density,
        "by_mass": by_mass,
        "scale": scale,
        "clock": clock,
        "calibration": calibration,
        "readings": readings,
    }


def pair(rng):
    slope, offset, end = injector(rng)
    later = rng.uniform(0.1e-3, 0.4e-3)         # s, at the lower voltage
    running = bench(rng, (slope, offset, end))
    low = bench(rng, (slope, offset + later, end + later), (running["calibration"], running["shared"]))
    return {"running": running, "low": low}


def main():
    if len(sys.argv) != 4 or sys.argv[1] not in ("make", "pairs"):
        sys.exit(__doc__)
    rng = random.Random(20261130)
    other = random.Random(20261201)
    one = pair if sys.argv[1] == "pairs" else lambda rng: {**bench(rng), "held_open": held_open(other)}
    with open(sys.argv[3], "w", encoding="utf-8") as file:
        json.dump([one(rng) for _ in range(int(sys.argv[2]))], file)


main()
