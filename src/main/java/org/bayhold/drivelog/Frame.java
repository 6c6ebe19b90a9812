package org.bayhold.drivelog;

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

    private final Sample sample = new Sample();
    private final Timeline timeline;
    private final Flaws flaws;
    private final Samples samples;
    private final List<StuckWatch> watches;
    /** When what is not brought any more was brought last. */
    private final double[] lastBrought = new double[Parameter.COUNT];
    /** One bit for each parameter: of this row, of the moment before, of all so far. */
    private long brought;

    private long broughtBefore;
    private long seen;
    private double broughtTime = Double.NaN;
    private double timeBefore;
    private long moments;
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
    }

    /** What a row brings of a parameter, in the unit that is judged in; NaN and {@link Numbers#NONE} are none. */
    void bring(int parameter, double value, long row) {
        if (value >= LOWEST[parameter] && value <= HIGHEST[parameter]) {
            sample.values[parameter] = value;
            brought |= 1L << parameter;
        } else if (value == Numbers.NONE) {
            flaws.count(Kind.NOT_A_NUMBER, parameter, row);
        } else if (!Double.isNaN(value)) {
            flaws.count(Kind.OUT_OF_RANGE, parameter, row);
        }
    }

    void bringTime(double time, long row) {
        broughtTime = time;
        if (time == Numbers.NONE) {
            flaws.count(Kind.NOT_A_NUMBER, TIME, row);
            broughtTime = Double.NaN;
        }
    }

    /** The time that the row brought; NaN where it brought none. */
    double time() {
        return broughtTime;
    }

    /** All that belongs to this moment was brought: hands it on. */
    void end(double time, long row) {
        sample.row = row;
        sample.time = time;
        timeline.pass(sample);
        seen |= brought;
        if (seen != brought) {
            forget(time);
        }
        broughtBefore = brought;
        brought = 0;
        broughtTime = Double.NaN;
        timeBefore = time;
        lastRow = row;
        firstRow = moments == 0 ? row : firstRow;
        moments++;
        for (int i = 0; i < watches.size(); i++) {
            watches.get(i).look(sample);
        }
        samples.take(sample);
    }

    /** What this row did not bring holds for a while, but not over a break. */
    private void forget(double time) {
        double hold = timeline.holdSeconds();
        for (long missing = seen & ~brought; missing != 0; missing &= missing - 1) {
            int parameter = Long.numberOfTrailingZeros(missing);
            if ((broughtBefore >> parameter & 1) == 1) {
                lastBrought[parameter] = timeBefore;
            }
            double holds = SLOW[parameter] ? Math.max(hold, SLOW_HOLD_SECONDS) : hold;
            if (sample.isAfterABreak || time - lastBrought[parameter] > holds) {
                sample.values[parameter] = Double.NaN;
            }
        }
    }

    /** What the row brought is not to be used; what was known before of the same is old. */
    void drop() {
        for (long dropped = brought; dropped != 0; dropped &= dropped - 1) {
            sample.values[Long.numberOfTrailingZeros(dropped)] = Double.NaN;
        }
        brought = 0;
        broughtTime = Double.NaN;
    }

    /** What was read at least once. */
    Set<Parameter> seen() {
        Set<Parameter> all = EnumSet.noneOf(Parameter.class);
        for (Parameter parameter : Parameter.values()) {
            if ((seen >> parameter.index() & 1) == 1) {
                all.add(parameter);
            }
        }
        return all;
    }

    long moments() {
        return moments;
    }

    long firstRow() {
        return firstRow;
    }

    long lastRow() {
        return lastRow;
    }
}
