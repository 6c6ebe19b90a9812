package org.bayhold.drivelog;

/** The t distribution, as far as it is needed here. {@code docs/drive-log.md, D10}. */
final class Student {
    /** Of the normal distribution, two-sided 95 %. */
    private static final double NORMAL = 1.959963984540054;

    private Student() {}

    /** The two-sided 95 % point, by the expansion of Cornish and Fisher (from memory); within 0.1 % from 4 degrees on. */
    static double point95(int degreesOfFreedom) {
        double n = Math.max(4, degreesOfFreedom);
        double z = NORMAL;
        double z3 = z * z * z;
        double z5 = z3 * z * z;
        double z7 = z5 * z * z;
        double z9 = z7 * z * z;
        return z
                + (z3 + z) / (4 * n)
                + (5 * z5 + 16 * z3 + 3 * z) / (96 * n * n)
                + (3 * z7 + 19 * z5 + 17 * z3 - 15 * z) / (384 * n * n * n)
                + (79 * z9 + 776 * z7 + 1_482 * z5 - 1_920 * z3 - 945 * z) / (92_160 * n * n * n * n);
    }

    /** By how much a standard error from few observations must grow so that the usual two of it still hold 95 %. */
    static double widening(int degreesOfFreedom) {
        return point95(degreesOfFreedom) / NORMAL;
    }
}
