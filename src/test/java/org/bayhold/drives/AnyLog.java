package org.bayhold.drives;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.bayhold.drivelog.AirSource;
import org.bayhold.drivelog.Fit;
import org.bayhold.drivelog.LoadAxis;
import org.bayhold.drivelog.Pull;
import org.bayhold.drivelog.TrimMap;
import org.bayhold.page.Drawn;
import org.jspecify.annotations.Nullable;

/** Parts of judgements as odd as they may come, whatever drive could have led to them. */
final class AnyLog {
    static final Words WORDS = (key, arguments) -> key.endsWith("above") ? "▲ " + arguments[0] : "words of " + key;

    private AnyLog() {}

    static TrimMap map(SplittableRandom random) {
        LoadAxis axis = LoadAxis.values()[random.nextInt(LoadAxis.values().length)];
        int speeds = random.nextInt(4) == 0 ? random.nextInt(1, 34) : random.nextInt(1, 12);
        int loads = random.nextInt(4) == 0 ? random.nextInt(1, 65) : random.nextInt(1, 12);
        List<TrimMap.Cell> cells = new ArrayList<>();
        double share = random.nextDouble();
        for (int speed = 0; speed < speeds; speed++) {
            for (int load = 0; load < loads; load++) {
                if (random.nextDouble() < share || (cells.isEmpty() && speed == speeds - 1 && load == loads - 1)) {
                    cells.add(cell(random, speed * 500, load * 10));
                }
            }
        }
        return new TrimMap(axis, cells);
    }

    private static TrimMap.Cell cell(SplittableRandom random, double rpm, double load) {
        Double bank1 = random.nextInt(9) == 0 ? null : (Double) percent(random);
        Double bank2 = random.nextBoolean() ? null : (Double) percent(random);
        return new TrimMap.Cell(
                rpm,
                rpm + 500,
                load,
                load + 10,
                Drawn.any(random, 2, 1e5),
                bank1,
                bank1 == null ? null : (Double) random.nextDouble(0, 9),
                bank2,
                bank2 == null ? null : (Double) random.nextDouble(0, 9),
                random.nextLong(1, 1000),
                random.nextLong(1000, 1_000_000));
    }

    private static double percent(SplittableRandom random) {
        return random.nextInt(20) == 0 ? random.nextDouble(-100, 297) : random.nextDouble(-13, 13);
    }

    static Fit fit(SplittableRandom random) {
        double scale = percent(random);
        double offset = random.nextDouble(-1, 1);
        double least = Drawn.any(random, 0.3, 20);
        double most = least * Drawn.any(random, 2, 100);
        List<Fit.Point> points = new ArrayList<>();
        int count = random.nextInt(4) == 0 ? random.nextInt(1, 2_561) : random.nextInt(8, 150);
        for (int i = 0; i < count; i++) {
            double flow = least * Math.pow(most / least, random.nextDouble());
            double trim = Math.max(-100, Math.min(297, scale + 100 * offset / flow + random.nextDouble(-4, 4)));
            points.add(new Fit.Point(Drawn.any(random, 2, 600), flow, trim, i, i + 20));
        }
        double error = random.nextInt(10) == 0 ? Double.NaN : Drawn.any(random, 0.01, 50);
        AirSource[] sources = {AirSource.IDEAL_GAS, AirSource.ABSOLUTE_LOAD, AirSource.LOGGED};
        return new Fit(
                scale, error, offset, Drawn.any(random, 0.001, 5), sources[random.nextInt(3)], 0.2, null, points);
    }

    static List<Pull> pulls(SplittableRandom random, int count) {
        List<Pull> pulls = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            pulls.add(pull(random, i));
        }
        return pulls;
    }

    /** Each channel logged, not logged, or now and then. */
    private static Pull pull(SplittableRandom random, int number) {
        double[] share = new double[5];
        for (int i = 0; i < share.length; i++) {
            share[i] = random.nextInt(3) == 0 ? 0 : random.nextInt(2) == 0 ? 1 : random.nextDouble();
        }
        double from = random.nextDouble(500, 5_000);
        double rise = random.nextDouble(300, 5_000);
        List<Pull.Moment> trace = new ArrayList<>();
        int moments = random.nextInt(1, 121);
        for (int i = 0; i < moments; i++) {
            trace.add(new Pull.Moment(
                    i * 0.1,
                    from + rise * i / moments + random.nextDouble(-40, 40),
                    some(random, share[0], random.nextInt(30) == 0 ? 16 : random.nextDouble(0.7, 1.1)),
                    some(random, share[1], random.nextDouble(0.78, 1)),
                    some(random, share[2], random.nextDouble(60, 260)),
                    some(random, share[3], random.nextDouble(-9, 9)),
                    some(random, share[4], random.nextDouble(1, 400))));
        }
        return new Pull(
                random.nextLong(1, 1_000),
                random.nextLong(1_000, 100_000),
                number * 61.0,
                moments * 0.1,
                from,
                from + rise,
                90,
                some(random, 0.7, percent(random)),
                some(random, 0.7, percent(random)),
                some(random, 0.7, percent(random)),
                some(random, 0.7, random.nextDouble(90, 250)),
                some(random, 0.7, random.nextDouble(0, 9)),
                some(random, 0.7, random.nextDouble(1, 400)),
                null,
                some(random, 0.7, random.nextDouble(10, 140)),
                trace);
    }

    private static @Nullable Double some(SplittableRandom random, double share, double figure) {
        return random.nextDouble() < share ? figure : null;
    }
}
