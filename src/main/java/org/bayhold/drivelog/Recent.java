package org.bayhold.drivelog;

/** The values of the last part of a second: what came before is forgotten, and so is the oldest where there are many. */
final class Recent {
    private static final int ROOM = 64;

    private final double window;
    private final int least;
    private final double[] times = new double[ROOM];
    private final double[] values = new double[ROOM];
    private int first;
    private int count;

    /** @param least so many are kept, however long ago they were */
    Recent(double windowSeconds, int least) {
        this.window = windowSeconds;
        this.least = least;
    }

    void add(double time, double value) {
        while (count >= least && count > 0 && time - times[first] > window) {
            first = (first + 1) % ROOM;
            count--;
        }
        if (count == ROOM) {
            first = (first + 1) % ROOM;
            count--;
        }
        int at = (first + count) % ROOM;
        times[at] = time;
        values[at] = value;
        count++;
    }

    /** What it never was below; the one value where it is read more seldom. */
    double lowest() {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            lowest = Math.min(lowest, values[(first + i) % ROOM]);
        }
        return lowest;
    }

    double highest() {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            highest = Math.max(highest, values[(first + i) % ROOM]);
        }
        return highest;
    }
}
