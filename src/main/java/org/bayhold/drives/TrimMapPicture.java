package org.bayhold.drives;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.bayhold.drivelog.LoadAxis;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drivelog.TrimMap;
import org.bayhold.drivelog.TrimMap.Cell;
import org.bayhold.page.Plot;
import org.bayhold.page.Plot.Tick;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;

/**
 * The trim map as a picture: load to the right, engine speed upwards, so that all columns fit a phone. Lengths are in the
 * picture's own units. Pure. {@code docs/drive-log.md, D9 and D18}.
 *
 * @param axis what stands to the right, with its unit
 * @param speeds in rpm, at edges of cells, as are the loads
 * @param normal percent from which a cell is shaded, as are those from which it is framed, and the seconds from which it is judged
 * @param boxes by rising speed, then by rising load: the rows of the table too
 */
record TrimMapPicture(
        String axis,
        int bottom,
        double right,
        List<Tick> speeds,
        List<Tick> loads,
        List<Box> boxes,
        String normal,
        String limit,
        String least) {
    /** Room for five digits. */
    static final int LEFT = 48;

    static final int TOP = 26;
    /** In no column is a cell wider. */
    private static final double WIDEST = 56;

    private static final double HIGHEST = 26;
    private static final double LOWEST = 14;
    private static final double USUAL_HEIGHT = 364;
    private static final double AIR = 2;

    /** How far a cell is off, told by its frame before it is told by its colour. */
    enum Grade {
        /** Fewer seconds than a cell is judged from. */
        TOO_SHORT,
        NORMAL,
        /** Beyond what cruise as a whole may have. */
        NOTABLE,
        /** Beyond what a cell may have. */
        BEYOND
    }

    /**
     * A cell as it is drawn.
     *
     * @param text its worst mean total trim in percent, with as many digits as fit; empty where none does
     * @param speed from and to, as is the load
     * @param bank1 percent with its spread; empty where it is not logged
     */
    record Box(
            Cell cell,
            Grade grade,
            double x,
            double y,
            double width,
            double height,
            String text,
            String speed,
            String load,
            String trim,
            String bank1,
            String bank2,
            String seconds) {
        public boolean lean() {
            return cell.worstPercent() >= 0;
        }

        public boolean beyond() {
            return grade == Grade.BEYOND;
        }
    }

    /** Null where the engine ran in no cell. */
    static @Nullable TrimMapPicture of(TrimMap map, Thresholds thresholds, Units units, Words words) {
        LoadAxis axis = map.axis();
        if (axis == null || map.cells().isEmpty()) {
            return null;
        }
        MapSide across = MapSide.of(map.cells(), Cell::loadFrom, Cell::loadTo);
        MapSide up = MapSide.of(map.cells(), Cell::rpmFrom, Cell::rpmTo);
        double width = Math.min(WIDEST, (double) (Plot.RIGHT - LEFT) / across.count());
        double height = Math.max(LOWEST, Math.min(HIGHEST, USUAL_HEIGHT / up.count()));
        double bottom = TOP + height * up.count();
        String unit = unit(axis);
        DoubleFunction<String> load = figure -> units.number(figure, unit, 0);
        List<Box> boxes = new ArrayList<>();
        for (Cell cell : map.cells()) {
            boxes.add(new Box(
                    cell,
                    grade(cell, thresholds),
                    LEFT + across.place(cell.loadFrom()) * width,
                    bottom - up.place(cell.rpmTo()) * height,
                    width,
                    height,
                    fitting(cell, width),
                    Units.plain(cell.rpmFrom(), 0) + "–" + Units.plain(cell.rpmTo(), 0),
                    load.apply(cell.loadFrom()) + "–" + load.apply(cell.loadTo()) + " " + units.symbol(unit),
                    isKnown(cell) ? percent(cell.worstPercent()) : "",
                    bank(cell.bank1Percent(), cell.bank1Spread()),
                    bank(cell.bank2Percent(), cell.bank2Spread()),
                    Units.plain(cell.seconds(), 1)));
        }
        return new TrimMapPicture(
                words.say("drivelog.parameter." + axis.parameter()) + ", " + units.symbol(unit),
                (int) Math.ceil(bottom),
                LEFT + width * across.count(),
                up.ticks(figure -> Units.plain(figure, 0), place -> bottom - place * height, height, text -> Plot.ROW),
                across.ticks(load, place -> LEFT + place * width, width, text -> Plot.width(text) + Plot.CHARACTER),
                boxes,
                Units.plain(thresholds.cruiseTrimPercent(), 1),
                Units.plain(thresholds.cellTrimPercent(), 1),
                Units.plain(thresholds.cellSeconds(), 1));
    }

    /** As {@code Units} names it. */
    private static String unit(LoadAxis axis) {
        return switch (axis) {
            case CALCULATED_LOAD, ABSOLUTE_LOAD -> "%";
            case MANIFOLD_PRESSURE -> "kPa";
            case AIRFLOW -> "g/s";
        };
    }

    private static Grade grade(Cell cell, Thresholds thresholds) {
        double off = Math.abs(cell.worstPercent());
        if (cell.seconds() < thresholds.cellSeconds() || !isKnown(cell)) {
            return Grade.TOO_SHORT;
        }
        return off > thresholds.cellTrimPercent()
                ? Grade.BEYOND
                : off > thresholds.cruiseTrimPercent() ? Grade.NOTABLE : Grade.NORMAL;
    }

    private static boolean isKnown(Cell cell) {
        return cell.bank1Percent() != null || cell.bank2Percent() != null;
    }

    private static String percent(double figure) {
        return Plot.signed(figure, 1) + "\u00a0%";
    }

    private static String bank(@Nullable Double mean, @Nullable Double spread) {
        if (mean == null) {
            return "";
        }
        return percent(mean) + (spread == null ? "" : " ± " + Units.plain(spread, 1));
    }

    /** As many digits as there is room for; of a narrow cell the sign alone. */
    private static String fitting(Cell cell, double width) {
        if (!isKnown(cell)) {
            return "";
        }
        String whole = Plot.signed(cell.worstPercent(), 0);
        return Stream.of(Plot.signed(cell.worstPercent(), 1), whole, whole.replaceAll("\\d", ""))
                .filter(text -> smallWidth(text) + AIR <= width)
                .findFirst()
                .orElse("");
    }

    /** At 11 px, in the widest of the fonts that the pages name (DejaVu Sans: 0.636, 0.318 and 0.838 of the size). */
    static double smallWidth(String text) {
        return text.chars()
                .mapToDouble(sign -> Character.isDigit(sign) ? 7 : sign == '.' ? 3.5 : 9.3)
                .sum();
    }

    public double left() {
        return LEFT;
    }

    public double top() {
        return TOP;
    }

    public int height() {
        return bottom + 2 * Plot.ROW + 6;
    }

    public boolean twoBanks() {
        return boxes.stream().anyMatch(box -> !box.bank1().isEmpty())
                && boxes.stream().anyMatch(box -> !box.bank2().isEmpty());
    }

    /** The farthest off among the cells that are long enough; null where none is. */
    public @Nullable Box worst() {
        return boxes.stream()
                .filter(box -> box.grade() != Grade.TOO_SHORT)
                .max(Comparator.comparingDouble(box -> Math.abs(box.cell().worstPercent())))
                .orElse(null);
    }

    public long beyond() {
        return boxes.stream().filter(Box::beyond).count();
    }
}
