package org.bayhold.drives;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.bayhold.drivelog.Pull;
import org.bayhold.drivelog.Pull.Moment;
import org.bayhold.page.Axis;
import org.bayhold.page.Plot;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;

/**
 * The scales that all drawn pulls share, so that they can be compared. Pure.
 *
 * @param pulls that are drawn
 * @param targetKpa of the boost, absolute; null where none is on record
 * @param knockDegrees that are harmless
 */
record PullScales(Axis speed, List<Pull> pulls, @Nullable Double targetKpa, double knockDegrees, Units units) {
    /** Beyond these nobody has to know how much. */
    private static final double LEAST_LAMBDA = 0.4;

    private static final double MOST_LAMBDA = 2.2;

    /** What of a pull is drawn, from the top. */
    enum Channel {
        LAMBDA(""),
        PRESSURE("kPa"),
        KNOCK("°"),
        AIRFLOW("g/s");

        private final String unit;

        Channel(String unit) {
            this.unit = unit;
        }

        String unit() {
            return unit;
        }

        /** In SI; null where it is not known. */
        @Nullable Double measured(Moment moment) {
            return switch (this) {
                case LAMBDA -> moment.lambda();
                case PRESSURE -> moment.manifoldKpa();
                // logs write retard with either sign
                case KNOCK -> moment.knockDegrees() == null ? null : (Double) Math.abs(moment.knockDegrees());
                case AIRFLOW -> moment.airflowGPerS();
            };
        }
    }

    static PullScales of(List<Pull> pulls, @Nullable Double targetKpa, double knockDegrees, Units units) {
        DoubleSummaryStatistics speeds = pulls.stream()
                .flatMap(pull -> PullPicture.drawn(pull).stream())
                .mapToDouble(Moment::rpm)
                .summaryStatistics();
        // one moment alone has some room beside it
        double beside = speeds.getMax() > speeds.getMin() ? 0 : 100;
        return new PullScales(
                Axis.linear(speeds.getMin() - beside, speeds.getMax() + beside, Plot.LEFT, Plot.RIGHT),
                List.copyOf(pulls),
                targetKpa,
                knockDegrees,
                units);
    }

    /** Whether there is anything to draw. */
    boolean has(Pull pull, Channel channel) {
        return PullPicture.drawn(pull).stream().anyMatch(moment -> channel.measured(moment) != null);
    }

    /** In the reader's unit. */
    @Nullable Double shown(Channel channel, @Nullable Double figure) {
        return figure == null ? null : (Double) units.convert(figure, channel.unit());
    }

    /** What a channel is held against all along, in the reader's unit; null where there is none. */
    @Nullable Double limit(Channel channel) {
        return switch (channel) {
            case PRESSURE -> shown(channel, targetKpa);
            case KNOCK -> (Double) knockDegrees;
            case LAMBDA, AIRFLOW -> null;
        };
    }

    Axis up(Channel channel, double top, double bottom) {
        DoubleSummaryStatistics figures = new DoubleSummaryStatistics();
        for (Pull pull : pulls) {
            for (Moment moment : PullPicture.drawn(pull)) {
                accept(figures, shown(channel, channel.measured(moment)));
                if (channel == Channel.LAMBDA) {
                    accept(figures, moment.commanded());
                }
            }
        }
        accept(figures, limit(channel));
        return channel == Channel.LAMBDA ? lambda(figures, top, bottom) : other(channel, figures, top, bottom);
    }

    private static void accept(DoubleSummaryStatistics figures, @Nullable Double figure) {
        if (figure != null) {
            figures.accept(figure);
        }
    }

    private static Axis lambda(DoubleSummaryStatistics figures, double top, double bottom) {
        double least = Math.max(LEAST_LAMBDA, Math.min(MOST_LAMBDA, figures.getMin()));
        double most = Math.max(LEAST_LAMBDA, Math.min(MOST_LAMBDA, figures.getMax()));
        double more = Math.max(0.03, (most - least) * 0.08);
        return Axis.linear(least - more, most + more, bottom, top);
    }

    /** Pressures are told apart best without their nought; knock and air begin with it. */
    private static Axis other(Channel channel, DoubleSummaryStatistics figures, double top, double bottom) {
        double least = channel == Channel.PRESSURE ? figures.getMin() : 0;
        double most = Math.max(figures.getMax(), least);
        double more = Math.max(channel == Channel.KNOCK ? 0.5 : 0.1, (most - least) * 0.08);
        return Axis.linear(channel == Channel.PRESSURE ? least - more : least, most + more, bottom, top);
    }
}
