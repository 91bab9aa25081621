/*
 * The inner loop of a fall in time (src/solver/time/kernel.ts, sweep) in C, for comparison: the same rope, the same
 * steps, the same order of operations. cc -O2 time-kernel.c -lm; run with the number of nodes and steps; prints the
 * milliseconds of one run and the checksum's numbers.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static void sweep(double *nodes, double *sum, int a, int b, const double *run)
{
    const double k = run[0], c = run[1], l0 = run[2], per_mass = run[3], fall = run[4], dt = run[5];
    int i = 4 * a;
    double x0 = nodes[i], z0 = nodes[i + 1], u0 = nodes[i + 2], w0 = nodes[i + 3], fx0 = 0, fz0 = 0;
    for (int e = a; e < b; e++) {
        i += 4;
        const double x1 = nodes[i], z1 = nodes[i + 1], u1 = nodes[i + 2], w1 = nodes[i + 3];
        const double dx = x1 - x0, dz = z1 - z0;
        const double l = sqrt(dx * dx + dz * dz + 1e-30), per = 1 / l;
        const double tx = dx * per, tz = dz * per;
        double T = k * (l - l0) + c * ((u1 - u0) * tx + (w1 - w0) * tz);
        if (T < 0) T = 0;
        sum[e] += T;
        const double fx = T * tx, fz = T * tz;
        if (e > a) {
            const double u = u0 + per_mass * (fx - fx0);
            const double w = w0 + per_mass * (fz - fz0) - fall;
            nodes[i - 4] = x0 + dt * u;
            nodes[i - 3] = z0 + dt * w;
            nodes[i - 2] = u;
            nodes[i - 1] = w;
        }
        fx0 = fx;
        fz0 = fz;
        x0 = x1;
        z0 = z1;
        u0 = u1;
        w0 = w1;
    }
}

int main(int argc, char **argv)
{
    const int nodes = argc > 1 ? atoi(argv[1]) : 101, steps = argc > 2 ? atoi(argv[2]) : 40000;
    const double EA = 2.6e6, rest = 0.125, per_metre = 0.362, dt = 2e-5, k = EA / rest;
    const double run[6] = {k, 20e-6 * k, rest, dt / (rest * per_metre), 9.80665 * dt, dt};
    double *n = calloc(4 * nodes, sizeof *n), *sum = calloc(nodes, sizeof *sum);
    for (int i = 0; i < nodes; i++) {
        n[4 * i] = i * rest * 1.0017;
        n[4 * i + 3] = i == nodes / 2 ? -50 : 0;
    }
    struct timespec t0, t1;
    clock_gettime(CLOCK_MONOTONIC, &t0);
    for (int s = 0; s < steps; s++) sweep(n, sum, 0, nodes - 1, run);
    clock_gettime(CLOCK_MONOTONIC, &t1);
    printf("%.6f %.17g %.17g\n", (t1.tv_sec - t0.tv_sec) * 1e3 + (t1.tv_nsec - t0.tv_nsec) * 1e-6, sum[10],
           n[4 * (nodes / 2) + 1]);
    return 0;
}
