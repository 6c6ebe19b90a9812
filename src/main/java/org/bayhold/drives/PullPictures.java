package org.bayhold.drives;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bayhold.drivelog.Pull;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.page.Plot;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;

/**
 * The pulls at full load: those that matter most drawn, at most {@value #DRAWN}, and all of them as a table. Pure.
 *
 * @param drawn by time, as are the rows
 * @param target of the boost, with its unit; empty where none is on record
 */
record PullPictures(List<PullPicture> drawn, List<Row> rows, String target, String pressureUnit, String flowUnit) {
    static final int DRAWN = 6;

    /** What the judgement holds of a pull; empty where it was not logged. */
    record Row(
            int number,
            String begins,
            String speeds,
            String leanest,
            String richest,
            String pressure,
            String knock,
            String airflow,
            String duty,
            String lines) {}

    /** Null where there was no pull. */
    static @Nullable PullPictures of(
            List<Pull> pulls, Thresholds thresholds, @Nullable Double targetKpa, Units units, Words words) {
        if (pulls.isEmpty()) {
            return null;
        }
        Set<Integer> drawn = IntStream.range(0, pulls.size())
                .boxed()
                .filter(i -> isLogged(pulls.get(i)))
                .sorted(Comparator.comparingDouble(i -> -pulls.get(i).concern()))
                .limit(DRAWN)
                .collect(Collectors.toSet());
        PullScales scales = drawn.isEmpty()
                ? null
                : PullScales.of(drawn.stream().map(pulls::get).toList(), targetKpa, thresholds.knockDegrees(), units);
        List<PullPicture> pictures = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < pulls.size(); i++) {
            Row row = row(pulls.get(i), i + 1, units);
            rows.add(row);
            if (scales != null && drawn.contains(i)) {
                String title = words.say("drives.picture.pull", String.valueOf(i + 1), row.begins(), row.speeds());
                pictures.add(PullPicture.of(pulls.get(i), i + 1, title, scales, words));
            }
        }
        return new PullPictures(
                pictures,
                rows,
                targetKpa == null ? "" : units.show(targetKpa, "kPa", 0),
                units.symbol("kPa"),
                units.symbol("g/s"));
    }

    private static boolean isLogged(Pull pull) {
        return PullPicture.drawn(pull).stream()
                .anyMatch(moment -> moment.lambda() != null
                        || moment.manifoldKpa() != null
                        || moment.knockDegrees() != null
                        || moment.airflowGPerS() != null);
    }

    private static Row row(Pull pull, int number, Units units) {
        return new Row(
                number,
                clock(pull.beginSeconds()),
                Units.plain(pull.rpmFrom(), 0) + "–" + Units.plain(pull.rpmTo(), 0),
                percent(pull.leanestPercent()),
                percent(pull.richestPercent()),
                PullPicture.number(pull.manifoldKpa(), units, "kPa", 0),
                PullPicture.number(pull.knockDegrees(), units, "°", 1),
                PullPicture.number(pull.airflowGPerS(), units, "g/s", 1),
                pull.dutyPercent() == null ? "" : Units.plain(pull.dutyPercent(), 0) + "\u00a0%",
                pull.firstRow() + "–" + pull.lastRow());
    }

    private static String percent(@Nullable Double figure) {
        return figure == null ? "" : Plot.signed(figure, 1) + "\u00a0%";
    }

    /** Minutes and seconds since the log began. */
    private static String clock(double seconds) {
        long whole = (long) Math.floor(seconds);
        return whole / 60 + (whole % 60 < 10 ? ":0" : ":") + whole % 60;
    }

    public int left() {
        return rows.size() - drawn.size();
    }
}
