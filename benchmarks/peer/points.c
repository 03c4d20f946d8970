/* The open-form chain in C: what a compiler makes of the same maths. Called by the benchmarks; compiled by build, as C++ for g++. */
#include <math.h>
#include <stddef.h>

/* The order of PeerConstants in the benchmarks. */
typedef struct {
    double displacement, revolutions, compressor, cooler, cooler_loss, belt, drive;
    double measured_pressure, measured_temperature, friction, friction_speed, bsfc, lambda, air_fuel;
    double ambient, temperature, density;
    double base, gain_below, gain, onset, ceiling;
    double rated_flow, rated_pressure, test_density, count, injections;
} constants;

/* A table's pieces: start, value, slope, second, third, one array after the other, eight of each; unused starts are infinite. */
enum { PIECES = 8 };

static inline double cubic(const double *__restrict t, double x) {
    int k = 0;
    for (int i = 1; i < PIECES; i++)
        k += x >= t[i];
    double s = x - t[k];
    return t[PIECES + k] + s * (t[2 * PIECES + k] + s * (t[3 * PIECES + k] + s * t[4 * PIECES + k]));
}

/* Dead time against differential pressure: pressures, then times, eight of each. */
static inline double straight(const double *__restrict t, double x) {
    int k = 0;
    for (int i = 1; i < PIECES - 1; i++)
        k += x > t[i];
    return t[PIECES + k] + (t[PIECES + k + 1] - t[PIECES + k]) * (x - t[k]) / (t[k + 1] - t[k]);
}

static inline double mean_friction(double n) { return 97e3 + 900 * n + 18 * n * n; }
static inline double larger(double a, double b) { return a > b ? a : b; }
static inline double smaller(double a, double b) { return a < b ? a : b; }

extern "C" void points(const constants *__restrict c, const double *__restrict efficiency, const double *__restrict power,
            const double *__restrict dead_times, const double *__restrict speeds, const double *__restrict boosts,
            double *__restrict rails, double *__restrict fuels, double *__restrict flows, double *__restrict duties, size_t n) {
    const constants k = *c;
    const double gas = 287.05287, ratio_of_heats = 1.4;
    const double exponent = (ratio_of_heats - 1) / ratio_of_heats;
    for (size_t i = 0; i < n; i++) {
        double speed = speeds[i], boost = boosts[i];
        double manifold = k.ambient + boost;
        double ratio = larger(1, (manifold + k.cooler_loss) / k.ambient);
        double outlet = k.temperature * (1 + (exp(exponent * log(ratio)) - 1) / k.compressor);
        double charge = outlet - k.cooler * (outlet - k.temperature);
        double air = cubic(efficiency, speed) * (manifold / (gas * charge)) * k.displacement * speed / k.revolutions;
        double dense = manifold / charge * k.measured_temperature / k.measured_pressure;
        double measured = cubic(power, speed);
        double friction = k.friction * speed * mean_friction(speed) / (k.friction_speed * mean_friction(k.friction_speed));
        double gross = larger(0, (measured + friction) * dense - friction);
        double fuel = larger(air / (k.lambda * k.air_fuel), gross * k.bsfc) / k.density;
        double rail = smaller(k.ceiling, k.base + k.gain_below * smaller(boost, k.onset) + k.gain * larger(0, boost - k.onset));
        double across = rail + k.ambient - manifold;
        double flow = k.rated_flow * sqrt(larger(0, across) / k.rated_pressure * k.test_density / k.density);
        double time = k.revolutions / (speed * k.injections);
        rails[i] = rail;
        fuels[i] = fuel;
        flows[i] = flow;
        duties[i] = (straight(dead_times, across) + fuel / k.count * time / flow) / time;
    }
}
