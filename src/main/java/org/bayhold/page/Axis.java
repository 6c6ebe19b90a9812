package org.bayhold.page;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * One side of a picture: which figure stands where. Lengths are in the picture's own units. Pure.
 *
 * @param least the figure at {@code from}
 * @param most the figure at {@code to}, larger than {@code least}
 * @param from where the axis begins; further than {@code to} where it rises
 * @param logarithmic equal ratios are equal lengths; both figures are above nought
 */
public record Axis(double least, double most, double from, double to, boolean logarithmic) {
    /** Of a decade. */
    private static final double[] ROUND = {1, 2, 5};

    public Axis {
        if (!(least < most) || (logarithmic && !(least > 0))) {
            throw new IllegalArgumentException(least + " to " + most);
        }
    }

    public static Axis linear(double least, double most, double from, double to) {
        return new Axis(least, most, from, to, false);
    }

    public static Axis logarithmic(double least, double most, double from, double to) {
        return new Axis(least, most, from, to, true);
    }

    /** Where a figure stands; one beyond the axis stands at its end. */
    public double at(double figure) {
        double inside = Math.min(most, Math.max(least, figure));
        double part =
                logarithmic ? Math.log(inside / least) / Math.log(most / least) : (inside - least) / (most - least);
        return from + Math.min(1, Math.max(0, part)) * (to - from);
    }

    public boolean holds(double figure) {
        return figure >= least && figure <= most;
    }

    /** Round figures on the axis, rising, at least {@code room} apart where they are drawn. */
    public List<Double> ticks(double room) {
        return logarithmic ? roundInEachDecade(room) : evenly(room);
    }

    private List<Double> evenly(double room) {
        int parts = Math.max(1, (int) (Math.abs(to - from) / room));
        double step = roundAbove((most - least) / parts);
        List<Double> ticks = new ArrayList<>();
        for (long i = (long) Math.ceil(least / step - 1e-9); i * step <= most + step * 1e-9; i++) {
            ticks.add(decimal(i, step));
        }
        return ticks;
    }

    /** A multiple without the dust of its multiplication. */
    private static double decimal(long times, double step) {
        return BigDecimal.valueOf(step).multiply(BigDecimal.valueOf(times)).doubleValue();
    }

    private List<Double> roundInEachDecade(double room) {
        List<Double> ticks = new ArrayList<>();
        double last = Double.NaN;
        for (int decade = (int) Math.floor(Math.log10(least)); decade <= Math.log10(most); decade++) {
            for (double digit : ROUND) {
                double figure = Double.parseDouble((int) digit + "e" + decade);
                if (holds(figure) && !(Math.abs(at(figure) - last) < room)) {
                    ticks.add(figure);
                    last = at(figure);
                }
            }
        }
        return ticks;
    }

    /** The next of 1, 2, 5, 10, 20, … that is no less. */
    public static double roundAbove(double figure) {
        int decade = (int) Math.floor(Math.log10(figure));
        for (double digit : ROUND) {
            double round = Double.parseDouble((int) digit + "e" + decade);
            if (round >= figure * (1 - 1e-9)) {
                return round;
            }
        }
        return Double.parseDouble("1e" + (decade + 1));
    }
}
