package org.bayhold.drivelog;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.bayhold.drivelog.Flaw.Kind;

/**
 * Puts together what is known at each moment: what the rows bring, as long as it holds, without what no such sensor can
 * give. {@code docs/drive-log.md, D5 and D6}.
 */
final class Frame {
    private static final int TIME = Parameter.TIME.index();
    private static final double SLOW_HOLD_SECONDS = 30;
    private static final double[] LOWEST = new double[Parameter.COUNT];
    private static final double[] HIGHEST = new double[Parameter.COUNT];
    private static final boolean[] SLOW = new boolean[Parameter.COUNT];

    static {
        for (Parameter parameter : Parameter.values()) {
            LOWEST[parameter.index()] = parameter.lowest();
            HIGHEST[parameter.index()] = parameter.highest();
            SLOW[parameter.index()] = parameter.isSlow();
        }
    }

    private final double[] brought = new double[Parameter.COUNT];
    private final double[] broughtAt = new double[Parameter.COUNT];
    private final boolean[] isSeen = new boolean[Parameter.COUNT];
    private final Sample sample = new Sample();
    private final Timeline timeline;
    private final Flaws flaws;
    private final Samples samples;
    private final List<StuckWatch> watches;
    private long rows;
    private long firstRow;
    private long lastRow;

    Frame(Timeline timeline, Flaws flaws, Samples samples) {
        this.timeline = timeline;
        this.flaws = flaws;
        this.samples = samples;
        this.watches = Stream.of(
                        Parameter.ENGINE_SPEED,
                        Parameter.AIRFLOW,
                        Parameter.MANIFOLD_PRESSURE,
                        Parameter.CALCULATED_LOAD,
                        Parameter.ABSOLUTE_LOAD)
                .map(parameter -> new StuckWatch(parameter, flaws))
                .toList();
        Arrays.fill(brought, Double.NaN);
    }

    /** What a row brings of a parameter, in the unit that is judged in; NaN and {@link Numbers#NONE} are none. */
    void bring(int parameter, double value, long row) {
        if (value >= LOWEST[parameter] && value <= HIGHEST[parameter]) {
            brought[parameter] = value;
        } else if (value == Numbers.NONE) {
            flaws.count(Kind.NOT_A_NUMBER, parameter, row);
        } else if (!Double.isNaN(value)) {
            flaws.count(Kind.OUT_OF_RANGE, parameter, row);
        }
    }

    /** The time that the row brought; NaN where it brought none. */
    double time() {
        return brought[TIME];
    }

    /** All that belongs to this moment was brought: hands it on. */
    void end(double time, long row) {
        sample.row = row;
        sample.time = time;
        timeline.pass(sample);
        merge(time);
        lastRow = row;
        firstRow = rows == 0 ? row : firstRow;
        rows++;
        for (StuckWatch watch : watches) {
            watch.look(sample);
        }
        samples.take(sample);
    }

    private void merge(double time) {
        double hold = timeline.holdSeconds();
        for (int parameter = 1; parameter < brought.length; parameter++) {
            double now = brought[parameter];
            if (!Double.isNaN(now)) {
                sample.values[parameter] = now;
                broughtAt[parameter] = time;
                brought[parameter] = Double.NaN;
                isSeen[parameter] = true;
            } else if (sample.isAfterABreak
                    || time - broughtAt[parameter] > (SLOW[parameter] ? SLOW_HOLD_SECONDS : hold)) {
                sample.values[parameter] = Double.NaN;
            }
        }
        brought[TIME] = Double.NaN;
    }

    /** What the row brought is not to be used. */
    void drop() {
        Arrays.fill(brought, Double.NaN);
    }

    /** What was read at least once. */
    Set<Parameter> seen() {
        Set<Parameter> all = EnumSet.noneOf(Parameter.class);
        for (Parameter parameter : Parameter.values()) {
            if (isSeen[parameter.index()]) {
                all.add(parameter);
            }
        }
        return all;
    }

    long moments() {
        return rows;
    }

    long firstRow() {
        return firstRow;
    }

    long lastRow() {
        return lastRow;
    }
}
