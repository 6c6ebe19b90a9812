package org.bayhold.drivelog;

import java.util.Arrays;

/** What is known at one moment of the drive; one object that is filled anew for each. NaN where something is not known. */
final class Sample {
    final double[] values = new double[Parameter.COUNT];
    /** The line of the file. */
    long row;
    /** Seconds, from wherever the file counts. */
    double time;
    /** Since the moment before; 0 where that is not to be counted. */
    double seconds;
    /** Nothing that was known before the gap in front of this moment holds any more. */
    boolean isAfterABreak;

    Sample() {
        Arrays.fill(values, Double.NaN);
    }

    double of(Parameter parameter) {
        return values[parameter.index()];
    }

    boolean has(Parameter parameter) {
        return !Double.isNaN(of(parameter));
    }
}
