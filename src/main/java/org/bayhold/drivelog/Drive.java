package org.bayhold.drivelog;

import org.jspecify.annotations.Nullable;

/** Takes the moments of a drive one by one and keeps what the judgement needs of them, in a room that does not grow. */
final class Drive implements Samples {
    private static final double RUNNING_RPM = 300;
    /** Where the fuel system's status is not logged, a command off 1 by more is no closed loop at lambda 1. */
    private static final double AT_LAMBDA_ONE = 0.05;

    private static final double AT_LIMIT_PERCENT = 1;
    private static final double BEGINNING_SECONDS = 10;

    private final Thresholds thresholds;
    private final double authority;
    private final Steady steady;
    final Pulls pulls;
    final TrimCells cells = new TrimCells();
    final FlowPoints points = new FlowPoints();
    final Share idle = new Share();
    final Share cruise = new Share();
    final Share all = new Share();

    private double idleFlow;
    private double idleFlowSeconds;
    private double warmSeconds;
    private double closedSeconds;
    private double limitSeconds;
    private long limitFirstRow;
    private long limitLastRow;
    private double learned;
    private double learnedSeconds;
    private long learnedLastRow;
    private boolean isFullLoad;

    Drive(EngineFacts facts, Thresholds thresholds) {
        this.thresholds = thresholds;
        this.authority = facts.trimAuthorityPercent();
        this.pulls = new Pulls(facts, thresholds);
        this.steady = new Steady(new Air(facts.displacementCc()), this::take);
    }

    /** Trims of some part of the drive. */
    static final class Share {
        double seconds;
        long firstRow;
        long lastRow;
        private double sum1;
        private double seconds1;
        private double sum2;
        private double seconds2;
        private double difference;
        private double bothSeconds;

        private void add(Segment segment) {
            double by = segment.seconds();
            firstRow = seconds == 0 ? segment.firstRow() : firstRow;
            lastRow = segment.lastRow();
            seconds += by;
            if (segment.bank1().isKnown()) {
                sum1 += segment.bank1().mean() * by;
                seconds1 += by;
            }
            if (segment.bank2().isKnown()) {
                sum2 += segment.bank2().mean() * by;
                seconds2 += by;
            }
            if (segment.bank1().isKnown() && segment.bank2().isKnown()) {
                difference += (segment.bank1().mean() - segment.bank2().mean()) * by;
                bothSeconds += by;
            }
        }

        @Nullable Double bank1() {
            return seconds1 > 0 ? sum1 / seconds1 : null;
        }

        @Nullable Double bank2() {
            return seconds2 > 0 ? sum2 / seconds2 : null;
        }

        @Nullable Double difference() {
            return bothSeconds > 0 ? difference / bothSeconds : null;
        }

        /** Of the bank that is the farther from zero; 0 where none is known. */
        double worst() {
            double one = bank1() == null ? 0 : bank1();
            double two = bank2() == null ? 0 : bank2();
            return Math.abs(one) >= Math.abs(two) ? one : two;
        }
    }

    @Override
    public void take(Sample sample) {
        isFullLoad = pulls.take(sample);
        beginning(sample);
        boolean isWarm = sample.of(Parameter.COOLANT_TEMPERATURE) >= thresholds.warmCoolantC();
        boolean isRunning = sample.of(Parameter.ENGINE_SPEED) >= RUNNING_RPM;
        if (!isWarm || !isRunning) {
            steady.interrupt();
            return;
        }
        warmSeconds += sample.seconds;
        if (!isClosedLoop(sample)) {
            steady.interrupt();
            return;
        }
        closedSeconds += sample.seconds;
        limits(sample);
        steady.take(sample);
    }

    private boolean isClosedLoop(Sample sample) {
        double status = sample.of(Parameter.FUEL_SYSTEM_STATUS);
        if (!Double.isNaN(status)) {
            return status > 0;
        }
        return !isFullLoad && !(Math.abs(sample.of(Parameter.COMMANDED_RATIO) - 1) > AT_LAMBDA_ONE);
    }

    /** What was learned before the log began. */
    private void beginning(Sample sample) {
        double longTerm = sample.of(Parameter.LONG_TRIM_1);
        if (learnedSeconds < BEGINNING_SECONDS && !Double.isNaN(longTerm)) {
            learned += longTerm * sample.seconds;
            learnedSeconds += sample.seconds;
            learnedLastRow = sample.row;
        }
    }

    private void limits(Sample sample) {
        double limit = authority - AT_LIMIT_PERCENT;
        boolean isAtLimit = isBeyond(limit, sample.of(Parameter.SHORT_TRIM_1), sample.of(Parameter.LONG_TRIM_1))
                || isBeyond(limit, sample.of(Parameter.SHORT_TRIM_2), sample.of(Parameter.LONG_TRIM_2));
        if (isAtLimit) {
            limitFirstRow = limitSeconds == 0 ? sample.row : limitFirstRow;
            limitLastRow = sample.row;
            limitSeconds += sample.seconds;
        }
    }

    private static boolean isBeyond(double limit, double shortTerm, double longTerm) {
        return Math.abs(shortTerm) >= limit
                || Math.abs(longTerm) >= limit
                || Math.abs(Trims.total(shortTerm, longTerm)) >= limit;
    }

    private void take(Segment segment) {
        LoadAxis axis = steady.axis();
        if (axis == null) {
            return;
        }
        all.add(segment);
        cells.add(segment, axis);
        points.add(segment);
        if (segment.isIdle()) {
            idle.add(segment);
            if (segment.flow() > 0) {
                idleFlow += segment.flow() * segment.seconds();
                idleFlowSeconds += segment.seconds();
            }
        } else {
            cruise.add(segment);
        }
    }

    void finish() {
        steady.interrupt();
        pulls.finish();
    }

    @Nullable LoadAxis axis() {
        return steady.axis();
    }

    /** g/s; NaN where it is not known. */
    double idleFlow() {
        return idleFlowSeconds > 0 ? idleFlow / idleFlowSeconds : Double.NaN;
    }

    double warmSeconds() {
        return warmSeconds;
    }

    double closedSeconds() {
        return closedSeconds;
    }

    double limitSeconds() {
        return limitSeconds;
    }

    Rows limitRows() {
        return new Rows(limitFirstRow, limitLastRow);
    }

    /** The mean long-term trim of the first seconds; NaN where it is not known. */
    double learnedBefore() {
        return learnedSeconds > 0 ? learned / learnedSeconds : Double.NaN;
    }

    long learnedLastRow() {
        return learnedLastRow;
    }
}
