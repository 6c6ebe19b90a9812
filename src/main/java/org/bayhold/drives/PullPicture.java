package org.bayhold.drives;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.bayhold.drivelog.Pull;
import org.bayhold.drivelog.Pull.Moment;
import org.bayhold.page.Axis;
import org.bayhold.page.Plot;
import org.bayhold.page.Plot.Figures;
import org.bayhold.page.Plot.Tick;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;

/**
 * One pull over the engine speed: a panel for each channel that was logged, below each other, in the scales of {@link PullScales}.
 * Lengths are in the picture's own units. Pure. {@code docs/drive-log.md, D12 and D18}.
 *
 * @param title its number, its time and its engine speeds
 * @param speeds under the last panel
 * @param rows some moments, from the first to the last
 */
record PullPicture(String title, int number, int height, List<Tick> speeds, List<Panel> panels, List<Row> rows)
        implements Plot.Framed {
    static final int PANEL = 54;
    private static final int HEAD = 22;
    private static final int GAP = 8;
    /** A panel is low: its figures are closer than those of other pictures. */
    private static final int ROOM_DOWN = 18;

    private static final int ROWS = 9;
    /** In which the driver lifts and the pull is not over yet. */
    private static final double LIFTING_SECONDS = 0.5;
    /** Of a logged value: more digits than a sensor has. */
    private static final int LAMBDA_DECIMALS = 3;

    /**
     * @param name with its unit, and what the dashed line is
     * @param worst what the judgement holds of it; empty where it holds nothing
     * @param line the path of what was measured; it is broken where nothing was logged
     * @param dashed the path of what it is to be held against; empty where that is not known
     * @param above what lies above the panel, as is {@code below} below it; empty where nothing does
     */
    record Panel(
            PullScales.Channel channel,
            String name,
            String worst,
            double top,
            double bottom,
            List<Tick> ticks,
            String line,
            String dashed,
            String above,
            String below) {}

    /** Empty where it is not known. */
    record Row(String rpm, String lambda, String commanded, String pressure, String knock, String airflow) {}

    /**
     * What is drawn of a pull: all of it but for its last moments while the engine speed falls, which would fold every line
     * back over itself. Where they last, they are no end, and stay.
     */
    static List<Moment> drawn(Pull pull) {
        List<Moment> trace = pull.trace();
        int highest = 0;
        for (int i = 1; i < trace.size(); i++) {
            highest = trace.get(i).rpm() > trace.get(highest).rpm() ? i : highest;
        }
        double falls = trace.isEmpty()
                ? 0
                : trace.get(trace.size() - 1).seconds() - trace.get(highest).seconds();
        return falls > LIFTING_SECONDS ? trace : trace.subList(0, Math.min(highest + 1, trace.size()));
    }

    static PullPicture of(Pull pull, int number, String title, PullScales scales, Words words) {
        List<Panel> panels = new ArrayList<>();
        double top = 0;
        for (PullScales.Channel channel : PullScales.Channel.values()) {
            if (scales.has(pull, channel)) {
                panels.add(panel(pull, channel, top + HEAD, scales, words));
                top += HEAD + PANEL + GAP;
            }
        }
        return new PullPicture(
                title,
                number,
                (int) top + 2 * Plot.ROW,
                Plot.ticks(scales.speed(), Plot.ROOM_ACROSS + Plot.CHARACTER, ""),
                panels,
                rows(pull, scales.units()));
    }

    private static Panel panel(Pull pull, PullScales.Channel channel, double top, PullScales scales, Words words) {
        double bottom = top + PANEL;
        Axis up = scales.up(channel, top, bottom);
        Function<Moment, @Nullable Double> measured = moment -> scales.shown(channel, channel.measured(moment));
        Double limit = scales.limit(channel);
        String dashed = limit == null ? "" : level(limit, scales.speed(), up);
        if (channel == PullScales.Channel.LAMBDA) {
            dashed = path(drawn(pull), Moment::commanded, scales.speed(), up);
        }
        List<Double> values = drawn(pull).stream()
                .map(measured)
                .flatMap(Stream::ofNullable)
                .sorted()
                .toList();
        String worst = worst(pull, channel, scales.units(), words);
        String name =
                words.say("drives.picture.channel." + channel, scales.units().symbol(channel.unit()))
                        + (dashed.isEmpty() ? "" : words.say("drives.picture.dashed." + channel));
        double most = values.get(values.size() - 1);
        return new Panel(
                channel,
                Plot.shortened(name, Plot.RIGHT - Plot.width(worst) - Plot.CHARACTER),
                worst,
                top,
                bottom,
                Plot.ticks(up, ROOM_DOWN, ""),
                path(drawn(pull), measured, scales.speed(), up),
                dashed,
                most > up.most() ? words.say("pictures.above", Units.plain(most, 2)) : "",
                values.get(0) < up.least() ? words.say("pictures.below", Units.plain(values.get(0), 2)) : "");
    }

    private static String level(double figure, Axis across, Axis up) {
        return Plot.line(List.of(new Figures(across.least(), figure), new Figures(across.most(), figure)), across, up);
    }

    /** Each stretch without a hole by itself; a moment alone is a dot. */
    private static String path(List<Moment> trace, Function<Moment, @Nullable Double> value, Axis across, Axis up) {
        StringBuilder path = new StringBuilder();
        List<Figures> stretch = new ArrayList<>();
        for (Moment moment : trace) {
            Double figure = value.apply(moment);
            if (figure == null) {
                path.append(stretch(stretch, across, up));
                stretch.clear();
            } else {
                stretch.add(new Figures(moment.rpm(), figure));
            }
        }
        return path.append(stretch(stretch, across, up)).toString();
    }

    private static String stretch(List<Figures> stretch, Axis across, Axis up) {
        if (stretch.size() != 1) {
            return Plot.line(stretch, across, up);
        }
        Figures only = stretch.get(0);
        String place = Plot.place(across.at(only.across()), up.at(only.up()));
        return up.holds(only.up()) ? "M" + place + "L" + place : "";
    }

    private static String worst(Pull pull, PullScales.Channel channel, Units units, Words words) {
        return switch (channel) {
            case LAMBDA -> lambda(pull, words);
            case PRESSURE -> number(pull.manifoldKpa(), units, "kPa", 0);
            case KNOCK -> number(pull.knockDegrees(), units, "°", 1);
            case AIRFLOW -> number(pull.airflowGPerS(), units, "g/s", 1);
        };
    }

    /** The second that was farther off. */
    private static String lambda(Pull pull, Words words) {
        Double lean = pull.leanestPercent();
        Double rich = pull.richestPercent();
        if (lean == null || rich == null) {
            return "";
        }
        return Math.abs(lean) >= Math.abs(rich)
                ? words.say("drives.picture.leanest", Plot.signed(lean, 1))
                : words.say("drives.picture.richest", Plot.signed(rich, 1));
    }

    static String number(@Nullable Double figure, Units units, String unit, int decimals) {
        return figure == null ? "" : units.number(figure, unit, decimals);
    }

    private static List<Row> rows(Pull pull, Units units) {
        List<Moment> trace = drawn(pull);
        int count = Math.min(ROWS, trace.size());
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Moment moment = trace.get(count == 1 ? 0 : i * (trace.size() - 1) / (count - 1));
            rows.add(new Row(
                    Units.plain(moment.rpm(), 0),
                    number(moment.lambda(), units, "", LAMBDA_DECIMALS),
                    number(moment.commanded(), units, "", LAMBDA_DECIMALS),
                    number(moment.manifoldKpa(), units, "kPa", 0),
                    number(PullScales.Channel.KNOCK.measured(moment), units, "°", 1),
                    number(moment.airflowGPerS(), units, "g/s", 1)));
        }
        return rows;
    }

    /** Whether anything of it was logged, by which the table has a column or has not. */
    public boolean has(String channel) {
        return panels.stream().anyMatch(panel -> Objects.equals(panel.channel().name(), channel));
    }

    /** Of the last panel. */
    public double bottom() {
        return panels.get(panels.size() - 1).bottom();
    }
}
