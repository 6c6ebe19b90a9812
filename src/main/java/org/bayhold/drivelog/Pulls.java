package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds the accelerations at full load while the log goes by. The range of the pedal is known only at the end; what was
 * taken for full load meanwhile and was none is dropped there. {@code docs/drive-log.md, D12}.
 */
final class Pulls {
    /** A pedal that was never pressed so far saw no full load, however small its observed range. */
    private static final double LEAST_TOP_PERCENT = 60;

    private static final double GEAR_CHANGE_RPM = 150;
    private static final double RISING_RPM = 300;
    private static final int KEPT = 64;

    private final EngineFacts facts;
    private final Thresholds thresholds;
    private final List<Pull> kept = new ArrayList<>();
    private double evictedSeconds;
    private @Nullable OpenPull open;
    private boolean openIsByAccelerator;
    private double began = Double.NaN;
    private final Range accelerator = new Range();
    private final Range throttle = new Range();
    private boolean isByAccelerator;

    private static final class Range {
        private double low = Double.POSITIVE_INFINITY;
        private double high = Double.NEGATIVE_INFINITY;

        void see(double value) {
            low = value < low ? value : low;
            high = value > high ? value : high;
        }

        double at(double percent) {
            return low + percent / 100 * (Math.max(high, LEAST_TOP_PERCENT) - low);
        }
    }

    Pulls(EngineFacts facts, Thresholds thresholds) {
        this.facts = facts;
        this.thresholds = thresholds;
    }

    /** How far the driver presses; NaN where nothing tells. */
    private static double pedal(Sample sample) {
        return sample.has(Parameter.ACCELERATOR) ? sample.of(Parameter.ACCELERATOR) : sample.of(Parameter.THROTTLE);
    }

    /** @return whether the engine is at full load now, as far as can be told by now */
    boolean take(Sample sample) {
        began = Double.isNaN(began) ? sample.time : began;
        isByAccelerator = sample.has(Parameter.ACCELERATOR);
        double pedal = pedal(sample);
        Range range = isByAccelerator ? accelerator : throttle;
        range.see(pedal);
        boolean isFull = pedal >= range.at(thresholds.fullLoadPedalPercent());
        double speed = sample.of(Parameter.ENGINE_SPEED);
        if (open != null
                && (!isFull
                        || sample.isAfterABreak
                        || openIsByAccelerator != isByAccelerator
                        || !(speed > open.rpm() - GEAR_CHANGE_RPM))) {
            close(open);
            open = null;
        }
        if (isFull && speed > 0) {
            if (open == null) {
                open = new OpenPull(sample, facts.injectors());
                openIsByAccelerator = isByAccelerator;
            }
            open.add(sample, pedal);
        }
        return isFull;
    }

    private void close(OpenPull pull) {
        if (pull.seconds() < thresholds.pullSeconds()) {
            return;
        }
        Pull ended = pull.end(began);
        if (ended.rpmTo() - ended.rpmFrom() < RISING_RPM) {
            return;
        }
        kept.add(ended);
        if (kept.size() > KEPT) {
            kept.removeIf(some -> !isFullLoad(some));
        }
        if (kept.size() > KEPT) {
            Pull least =
                    kept.stream().min(Comparator.comparingDouble(Pull::concern)).orElse(ended);
            kept.remove(least);
            evictedSeconds += least.seconds();
        }
    }

    private boolean isFullLoad(Pull pull) {
        Range range = openIsByAccelerator ? accelerator : throttle;
        return pull.pedalPercent() >= range.at(thresholds.fullLoadPedalPercent());
    }

    void finish() {
        if (open != null) {
            close(open);
            open = null;
        }
        kept.removeIf(pull -> !isFullLoad(pull));
    }

    /** By time; of very many those that matter most. */
    List<Pull> all() {
        return kept;
    }

    /** Of all, those that are not kept among them. */
    double seconds() {
        return evictedSeconds + kept.stream().mapToDouble(Pull::seconds).sum();
    }
}
