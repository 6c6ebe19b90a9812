package org.bayhold.drivelog;

import java.util.function.Consumer;
import org.bayhold.drivelog.Segment.Trim;
import org.jspecify.annotations.Nullable;

/**
 * Cuts steady running into segments of a few seconds. Engine speed and load stay within a narrow band over the whole of
 * a segment, and the first second after every transient is left out, while the correction still answers to it. {@code
 * docs/drive-log.md, D7}.
 */
final class Steady {
    private static final double LONGEST_SECONDS = 4;
    private static final double SHORTEST_SECONDS = 2;
    private static final double SETTLING_SECONDS = 1;
    private static final double SPEED_SHARE = 0.06;
    private static final double SPEED_LEAST_RPM = 120;

    private final Air air;
    private final Consumer<Segment> segments;
    private @Nullable LoadAxis axis;

    private boolean isOpen;
    private double settled;
    private double lowRpm;
    private double highRpm;
    private double lowLoad;
    private double highLoad;

    private final Mean rpm = new Mean();
    private final Mean load = new Mean();
    private final Mean flow = new Mean();
    private final Mean inverse = new Mean();
    private final Mean speed = new Mean();
    private final Mean trim1 = new Mean();
    private final Mean square1 = new Mean();
    private final Mean trim2 = new Mean();
    private final Mean square2 = new Mean();
    private double seconds;
    private int count;
    private boolean isTrimZero;
    private boolean isStatusKnown;
    private AirSource source = AirSource.NONE;
    private long firstRow;
    private long lastRow;
    private double endSeconds;

    Steady(Air air, Consumer<Segment> segments) {
        this.air = air;
        this.segments = segments;
    }

    /** A mean over time; not known as soon as one value of it is not. */
    private static final class Mean {
        private double sum;
        private double weight;

        void clear() {
            sum = 0;
            weight = 0;
        }

        void add(double value, double by) {
            sum += value * by;
            weight += by;
        }

        double get() {
            return weight > 0 ? sum / weight : Double.NaN;
        }
    }

    @Nullable LoadAxis axis() {
        return axis;
    }

    void take(Sample sample) {
        axis = axis == null ? LoadAxis.of(sample) : axis;
        double speedNow = sample.of(Parameter.ENGINE_SPEED);
        double loadNow = axis == null ? Double.NaN : sample.of(axis.parameter());
        if (axis == null || Double.isNaN(speedNow) || Double.isNaN(loadNow) || sample.isAfterABreak) {
            interrupt();
            return;
        }
        if (isOpen) {
            double low = Math.min(lowRpm, speedNow);
            double high = Math.max(highRpm, speedNow);
            double lowest = Math.min(lowLoad, loadNow);
            double highest = Math.max(highLoad, loadNow);
            boolean isSteady = high - low <= Math.max(SPEED_LEAST_RPM, SPEED_SHARE * high)
                    && highest - lowest <= axis.tolerance(highest);
            if (isSteady) {
                lowRpm = low;
                highRpm = high;
                lowLoad = lowest;
                highLoad = highest;
                add(sample, speedNow, loadNow);
                return;
            }
            interrupt();
        }
        isOpen = true;
        settled = 0;
        begin(speedNow, loadNow);
    }

    /** What comes next does not belong to what came before. */
    void interrupt() {
        if (isOpen) {
            close();
            isOpen = false;
        }
    }

    private void begin(double speedNow, double loadNow) {
        lowRpm = speedNow;
        highRpm = speedNow;
        lowLoad = loadNow;
        highLoad = loadNow;
        for (Mean mean : new Mean[] {rpm, load, flow, inverse, speed, trim1, square1, trim2, square2}) {
            mean.clear();
        }
        seconds = 0;
        count = 0;
        isTrimZero = true;
        isStatusKnown = true;
        source = AirSource.LOGGED;
        firstRow = 0;
    }

    private void add(Sample sample, double speedNow, double loadNow) {
        if (settled < SETTLING_SECONDS) {
            settled += sample.seconds;
            return;
        }
        double by = sample.seconds;
        firstRow = count == 0 ? sample.row : firstRow;
        lastRow = sample.row;
        endSeconds = sample.time;
        count++;
        seconds += by;
        rpm.add(speedNow, by);
        load.add(loadNow, by);
        double flowNow = air.flow(sample);
        flow.add(flowNow, by);
        inverse.add(1 / flowNow, by);
        AirSource now = air.source(sample);
        source = now.compareTo(source) < 0 ? now : source;
        speed.add(sample.of(Parameter.VEHICLE_SPEED), by);
        double one = Trims.total(sample, Parameter.SHORT_TRIM_1, Parameter.LONG_TRIM_1);
        double two = Trims.total(sample, Parameter.SHORT_TRIM_2, Parameter.LONG_TRIM_2);
        trim1.add(one, by);
        square1.add(one * one, by);
        trim2.add(two, by);
        square2.add(two * two, by);
        isTrimZero &= !(Math.abs(sample.of(Parameter.SHORT_TRIM_1)) > 0)
                && !(Math.abs(sample.of(Parameter.SHORT_TRIM_2)) > 0);
        isStatusKnown &= sample.has(Parameter.FUEL_SYSTEM_STATUS);
        if (seconds >= LONGEST_SECONDS && count > 1) {
            close();
            begin(speedNow, loadNow);
        }
    }

    private void close() {
        Trim bank1 = new Trim(trim1.get(), square1.get());
        Trim bank2 = new Trim(trim2.get(), square2.get());
        boolean isLong = seconds >= SHORTEST_SECONDS && count > 1;
        // a short-term trim that stays at nothing corrects nothing: open loop, where the log does not tell
        boolean isOpenLoop = isTrimZero && !isStatusKnown;
        if (!isLong || isOpenLoop || !(bank1.isKnown() || bank2.isKnown())) {
            return;
        }
        double trim = bank1.isKnown() && bank2.isKnown()
                ? (bank1.mean() + bank2.mean()) / 2
                : bank1.isKnown() ? bank1.mean() : bank2.mean();
        double inverseFlow = inverse.get();
        boolean isFlow = flow.get() > 0 && inverseFlow > 0 && inverseFlow < Double.POSITIVE_INFINITY;
        segments.accept(new Segment(
                endSeconds,
                seconds,
                rpm.get(),
                load.get(),
                isFlow ? flow.get() : Double.NaN,
                isFlow ? inverseFlow : Double.NaN,
                source,
                trim,
                bank1,
                bank2,
                speed.get(),
                firstRow,
                lastRow));
    }
}
