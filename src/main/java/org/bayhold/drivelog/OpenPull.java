package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.List;
import org.bayhold.drivelog.Pull.Moment;
import org.jspecify.annotations.Nullable;

/** A pull while it lasts. {@code docs/drive-log.md, D12}. */
final class OpenPull {
    /** Until the exhaust of full load has reached the sensor. */
    private static final double EXHAUST_SECONDS = 0.7;
    /** A command reaches the sensor within so long. */
    private static final double DELAY_SECONDS = 0.6;

    private static final double HELD_SECONDS = 0.3;
    private static final double BLOCK_SECONDS = 1;
    /** One reading is no evidence: of a slow log more than a second is taken. */
    private static final int BLOCK_READINGS = 3;

    private static final double FLAT_SHARE = 0.003;
    /** Two or three values may be alike by chance. */
    private static final int FLAT_LEAST = 4;

    private static final int TRACE = 120;
    /** Of a four-stroke engine, a pulse in ms at a speed in rpm: percent of the time. */
    private static final double PULSE_TO_DUTY = 1 / 1_200.0;

    private final EngineFacts.@Nullable Injectors injectors;
    private final Recent commanded = new Recent(DELAY_SECONDS, 2);
    private final Recent manifold = new Recent(HELD_SECONDS, 1);
    private final List<Moment> trace = new ArrayList<>();
    private int stride = 1;
    private int count;

    private final long firstRow;
    private final double begin;
    private final double rpmFrom;
    private long lastRow;
    private double seconds;
    private double rpmTo;
    private double pedal;
    private double error;
    private double errorSeconds;
    private double blockLean;
    private double blockRich;
    private double blockSeconds;
    private int blockCount;
    private double leanest = Double.NEGATIVE_INFINITY;
    private double richest = Double.POSITIVE_INFINITY;
    private double pressure = Double.NaN;
    private double knock = Double.NaN;
    private double airflow = Double.NaN;
    private double flatFrom;
    private double flatRpm;
    private int flatCount;
    private double duty = Double.NaN;

    OpenPull(Sample sample, EngineFacts.@Nullable Injectors injectors) {
        this.injectors = injectors;
        firstRow = sample.row;
        begin = sample.time;
        rpmFrom = sample.of(Parameter.ENGINE_SPEED);
        rpmTo = rpmFrom;
    }

    double rpm() {
        return rpmTo;
    }

    void add(Sample sample, double pedalNow) {
        double by = count == 0 ? 0 : sample.seconds;
        double speed = sample.of(Parameter.ENGINE_SPEED);
        lastRow = sample.row;
        seconds += by;
        pedal += pedalNow * by;
        rpmTo = Math.max(rpmTo, speed);
        mixture(sample, by);
        if (sample.has(Parameter.MANIFOLD_PRESSURE)) {
            manifold.add(sample.time, sample.of(Parameter.MANIFOLD_PRESSURE));
            pressure = most(pressure, manifold.lowest());
        }
        knock = most(knock, Math.abs(sample.of(Parameter.KNOCK_RETARD)));
        flow(sample.of(Parameter.AIRFLOW), speed);
        duty = most(duty, duty(sample, speed));
        trace(sample, speed);
        count++;
    }

    private static double most(double before, double now) {
        return Double.isNaN(before) || now > before ? now : before;
    }

    private void mixture(Sample sample, double by) {
        double measured = sample.of(Parameter.MEASURED_LAMBDA);
        if (!sample.has(Parameter.COMMANDED_RATIO) || Double.isNaN(measured)) {
            return;
        }
        commanded.add(sample.time, sample.of(Parameter.COMMANDED_RATIO));
        if (seconds < EXHAUST_SECONDS) {
            return;
        }
        errorSeconds += by;
        error += (measured / sample.of(Parameter.COMMANDED_RATIO) - 1) * by;
        // what was commanded a moment ago may be what is measured now
        blockLean += (measured / commanded.highest() - 1) * by;
        blockRich += (measured / commanded.lowest() - 1) * by;
        blockSeconds += by;
        blockCount++;
        if (blockSeconds >= BLOCK_SECONDS && blockCount >= BLOCK_READINGS) {
            endBlock();
        }
    }

    private void endBlock() {
        if (blockSeconds >= BLOCK_SECONDS / 2 && blockCount >= BLOCK_READINGS) {
            leanest = Math.max(leanest, blockLean / blockSeconds);
            richest = Math.min(richest, blockRich / blockSeconds);
        }
        blockLean = 0;
        blockRich = 0;
        blockSeconds = 0;
        blockCount = 0;
    }

    private void flow(double now, double speed) {
        if (Double.isNaN(now)) {
            return;
        }
        boolean isAbove = Double.isNaN(airflow) || now > airflow * (1 + FLAT_SHARE);
        if (isAbove || now < airflow * (1 - FLAT_SHARE)) {
            flatFrom = speed;
            flatCount = 0;
        }
        flatCount++;
        if (isAbove) {
            flatRpm = 0;
        } else if (flatCount >= FLAT_LEAST) {
            flatRpm = Math.max(flatRpm, speed - flatFrom);
        }
        airflow = isAbove ? now : airflow;
    }

    private double duty(Sample sample, double speed) {
        double pulse = sample.of(Parameter.INJECTOR_PULSE);
        if (!Double.isNaN(pulse)) {
            return pulse * speed * PULSE_TO_DUTY;
        }
        double lambda = sample.has(Parameter.MEASURED_LAMBDA)
                ? sample.of(Parameter.MEASURED_LAMBDA)
                : sample.of(Parameter.COMMANDED_RATIO);
        if (injectors == null) {
            return Double.NaN;
        }
        double fuel = sample.of(Parameter.AIRFLOW) / (lambda * injectors.stoichiometricRatio());
        double each = fuel / injectors.count() / injectors.densityKgPerL() * 60;
        return each / injectors.flowCcPerMin() * 100;
    }

    private void trace(Sample sample, double speed) {
        if (count % stride != 0) {
            return;
        }
        if (trace.size() == TRACE) {
            for (int i = 0; i < TRACE / 2; i++) {
                trace.set(i, trace.get(2 * i));
            }
            trace.subList(TRACE / 2, TRACE).clear();
            stride *= 2;
            if (count % stride != 0) {
                return;
            }
        }
        trace.add(new Moment(
                sample.time - begin,
                speed,
                known(sample.of(Parameter.MEASURED_LAMBDA)),
                known(sample.of(Parameter.COMMANDED_RATIO)),
                known(sample.of(Parameter.MANIFOLD_PRESSURE)),
                known(sample.of(Parameter.KNOCK_RETARD)),
                known(sample.of(Parameter.AIRFLOW))));
    }

    private static @Nullable Double known(double value) {
        return Double.isFinite(value) ? value : null;
    }

    double seconds() {
        return seconds;
    }

    Pull end(double logBegan) {
        endBlock();
        return new Pull(
                firstRow,
                lastRow,
                begin - logBegan,
                seconds,
                rpmFrom,
                rpmTo,
                seconds > 0 ? pedal / seconds : 0,
                errorSeconds > 0 ? known(error / errorSeconds * 100) : null,
                known(leanest * 100),
                known(richest * 100),
                known(pressure),
                known(knock),
                known(airflow),
                Double.isNaN(airflow) ? null : flatRpm,
                known(duty),
                trace);
    }
}
