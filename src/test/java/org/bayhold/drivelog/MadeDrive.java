package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;

/**
 * An engine with a closed loop, simulated from the physics and from nothing of the check: air comes in, the ECU believes in
 * another amount of it, a slow and a fast correction bring the mixture back, sensors round and make noise.
 *
 * <p>True air is {@code (1 + scale) * believed + offset}; so the correction that is right is {@code scale + offset /
 * believed}.
 */
final class MadeDrive {
    private static final double STEP = 0.05;
    private static final double DISPLACEMENT_L = 2.0;
    private static final double EXHAUST_DELAY = 0.25;

    private final SplittableRandom random;
    private double scale;
    private double offset;
    private double bankDifference;
    private double noise = 1;
    private double fullLoadError;
    private double knock;
    private double boostKpa = 180;
    private double meterCeiling = Double.POSITIVE_INFINITY;
    private double pumpLimit = Double.POSITIVE_INFINITY;
    private double learnedBefore;
    private double rowSeconds = 0.1;
    private double repeats = 1;
    private boolean withPulls = true;
    private double coldSeconds = 20;

    private double time;
    private double rpm = 820;
    private double manifold = 35;
    private double pedal = 14;
    private double speed;
    private double coolant = 62;
    private final Loop first = new Loop();
    private final Loop second = new Loop();
    private double disturbance;
    private double measured = 1;
    private double sinceRow = 1;
    private double fullError;
    private double worstFullError;

    private static final class Loop {
        private double fast;
        private double slow;
        private double direction = 1;
        private double wait;
    }

    MadeDrive(long seed) {
        random = new SplittableRandom(seed);
    }

    MadeDrive withScale(double percent) {
        scale = percent / 100;
        return this;
    }

    MadeDrive withOffset(double gramsPerSecond) {
        offset = gramsPerSecond;
        return this;
    }

    /** The second bank asks for so much more than the first. */
    MadeDrive withBankDifference(double percent) {
        bankDifference = percent / 100;
        return this;
    }

    MadeDrive withNoise(double factor) {
        noise = factor;
        return this;
    }

    /** Beside what the scale does there, where no loop corrects it. */
    MadeDrive withFullLoadError(double percent) {
        fullLoadError = percent / 100;
        return this;
    }

    MadeDrive withKnock(double degrees) {
        knock = degrees;
        return this;
    }

    MadeDrive withBoost(double kpa) {
        boostKpa = kpa;
        return this;
    }

    MadeDrive withMeterCeiling(double gramsPerSecond) {
        meterCeiling = gramsPerSecond;
        return this;
    }

    /** Beyond this flow the fuel does not follow. */
    MadeDrive withPumpLimit(double gramsPerSecond) {
        pumpLimit = gramsPerSecond;
        return this;
    }

    MadeDrive withLearned(double percent) {
        learnedBefore = percent / 100;
        return this;
    }

    MadeDrive every(double seconds) {
        rowSeconds = seconds;
        return this;
    }

    MadeDrive withoutPulls() {
        withPulls = false;
        return this;
    }

    MadeDrive times(double factor) {
        repeats = factor;
        return this;
    }

    List<MadeRow> rows() {
        List<MadeRow> rows = new ArrayList<>();
        run(rows::add);
        return rows;
    }

    /** A warm-up, idle, a dozen speeds and loads in random order and for random times, and three pulls. */
    void run(Consumer<MadeRow> rows) {
        first.slow = learnedBefore;
        second.slow = learnedBefore;
        hold(rows, 820, 35, coldSeconds);
        coolant = 88;
        for (int round = 0; round < repeats; round++) {
            hold(rows, 820, 35, 45 + random.nextDouble() * 10);
            for (int i = 0; i < 14; i++) {
                double toRpm = 1_500 + random.nextDouble() * 2_200;
                double toManifold = 38 + random.nextDouble() * 50;
                ramp(rows, toRpm, toManifold, 2 + random.nextDouble() * 3);
                hold(rows, toRpm, toManifold, 15 + random.nextDouble() * 15);
                if (withPulls && (i == 4 || i == 8 || i == 12)) {
                    pull(rows);
                }
            }
            ramp(rows, 820, 35, 6);
            hold(rows, 820, 35, 35 + random.nextDouble() * 10);
        }
    }

    private void hold(Consumer<MadeRow> rows, double toRpm, double toManifold, double seconds) {
        speed = toRpm < 1_000 ? 0 : toRpm / 35;
        for (double past = 0; past < seconds; past += STEP) {
            rpm = toRpm * (1 + 0.004 * random.nextGaussian());
            manifold = toManifold + 0.4 * random.nextGaussian();
            pedal = toRpm < 1_000 ? 14 : 16 + toManifold / 4;
            step(rows, false);
        }
    }

    private void ramp(Consumer<MadeRow> rows, double toRpm, double toManifold, double seconds) {
        double fromRpm = rpm;
        double fromManifold = manifold;
        double fromPedal = pedal;
        for (double past = 0; past < seconds; past += STEP) {
            double part = past / seconds;
            rpm = fromRpm + (toRpm - fromRpm) * part;
            manifold = fromManifold + (toManifold - fromManifold) * part;
            pedal = fromPedal + (16 + toManifold / 4 - fromPedal) * part;
            speed = rpm / 35;
            step(rows, false);
        }
    }

    private void pull(Consumer<MadeRow> rows) {
        ramp(rows, 2_400, 60, 2);
        double from = manifold;
        for (double past = 0; past < 4.5; past += STEP) {
            rpm = 2_400 + past * 800;
            manifold = Math.min(boostKpa, from + past * 150) + 0.5 * random.nextGaussian();
            pedal = Math.min(82, 30 + past * 400);
            step(rows, pedal > 70);
        }
        ramp(rows, 2_500, 40, 3);
    }

    private void step(Consumer<MadeRow> rows, boolean full) {
        time += STEP;
        double efficiency = 0.80 + 0.08 * Math.sin(rpm / 2_000) + (manifold - 60) / 1_500;
        double air = efficiency * manifold * DISPLACEMENT_L / (287.05 * 308.15) * 1_000 * rpm / 120;
        double believed = Math.min(meterCeiling, Math.max(0.3, (air - offset) / (1 + scale)));
        double commanded = full ? 0.85 : 1;
        boolean closed = !full && coolant > 70;
        disturbance += (-disturbance * STEP / 1.5) + 0.012 * noise * Math.sqrt(STEP) * random.nextGaussian();
        double need = air / believed * (1 + disturbance);
        if (air > pumpLimit) {
            need *= 1 + (air - pumpLimit) / pumpLimit;
        }
        double one = correct(first, need * (1 - bankDifference / 2), closed);
        correct(second, need * (1 + bankDifference / 2), closed);
        double mixture = full ? one * (1 + fullLoadError) : one;
        double lambda = commanded * mixture;
        worst(full, mixture - 1);
        measured += (lambda - measured) * STEP / EXHAUST_DELAY;
        sinceRow += STEP;
        if (sinceRow >= rowSeconds - 1e-9) {
            sinceRow = 0;
            rows.accept(row(full, closed, commanded, believed, air));
        }
    }

    /** How far from its command the engine truly burned over some second at full load, whatever any sensor says. */
    private void worst(boolean full, double error) {
        fullError = full ? fullError + (error - fullError) * STEP / 0.5 : 0;
        worstFullError = Math.max(worstFullError, Math.abs(fullError));
    }

    double worstFullLoadPercent() {
        return worstFullError * 100;
    }

    /** A two-point loop with a proportional jump, and a slow one that takes over what stays; gives the mixture that results. */
    private double correct(Loop loop, double need, boolean closed) {
        double mixture = need / ((1 + loop.fast) * (1 + loop.slow));
        if (!closed) {
            loop.fast = 0;
            return mixture;
        }
        loop.wait += STEP;
        double wanted = mixture > 1 ? 1 : -1;
        if (wanted != loop.direction && loop.wait > 0.3) {
            loop.direction = wanted;
            loop.wait = 0;
            loop.fast += wanted * 0.008;
        }
        loop.fast += loop.direction * 0.02 * STEP + (mixture - 1) * 0.4 * STEP;
        loop.fast = Math.max(-0.25, Math.min(0.25, loop.fast));
        double move = loop.fast * STEP / 20;
        loop.slow = Math.max(-0.25, Math.min(0.25, loop.slow + move));
        loop.fast -= move;
        return mixture;
    }

    private MadeRow row(boolean full, boolean closed, double commanded, double believed, double air) {
        double meter = Math.min(meterCeiling, believed * (1 + 0.008 * noise * random.nextGaussian()));
        double each = air / 4 / (rpm / 120);
        return new MadeRow(
                round(time, 0.001),
                round(rpm, 0.25),
                Math.min(100, round(believed / (1.05 * DISPLACEMENT_L * rpm / 120 * 1.184) * 100, 100 / 255.0)),
                round(coolant, 1),
                round(35, 1),
                round(manifold, 1),
                round(meter, 0.01),
                round(Math.min(86, pedal * 1.02), 100 / 255.0),
                round(pedal, 100 / 255.0),
                round(first.fast * 100, 100 / 128.0),
                round(first.slow * 100, 100 / 128.0),
                round(second.fast * 100, 100 / 128.0),
                round(second.slow * 100, 100 / 128.0),
                closed ? 2 : full ? 4 : 1,
                round(commanded, 0.001),
                round(measured * (1 + 0.004 * noise * random.nextGaussian()), 0.001),
                full ? round(knock * random.nextDouble(), 0.1) : 0,
                round(speed, 1),
                round(1 + each / (14.7 * commanded) / 0.745 / 0.011, 0.001),
                round(believed * 120 / rpm / DISPLACEMENT_L / 1.184 * 100, 100 / 255.0));
    }

    private static double round(double value, double step) {
        return Math.rint(value / step) * step;
    }

    static double displacementCc() {
        return DISPLACEMENT_L * 1_000;
    }
}
