package org.bayhold.drives;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.drivelog.Column;
import org.bayhold.drivelog.Parameter;
import org.bayhold.drivelog.Preview;
import org.bayhold.drivelog.Unit;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/** The columns of a file as a page asks for them: fields {@code column[i].parameter} and {@code column[i].unit}. */
final class ColumnForm {
    private static final int EXAMPLES = 3;

    private ColumnForm() {}

    /**
     * A column of the page.
     *
     * @param examples its first values
     */
    record Line(int index, Column column, String examples) {}

    static List<Line> lines(Preview preview) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < preview.columns().size(); i++) {
            lines.add(new Line(i, preview.columns().get(i), examples(preview, i)));
        }
        return lines;
    }

    private static String examples(Preview preview, int index) {
        if (preview.isOneRowAReading()) {
            return "";
        }
        return preview.rows().stream()
                .filter(row -> row.size() > index)
                .map(row -> row.get(index))
                .limit(EXAMPLES)
                .collect(Collectors.joining(" · "));
    }

    /** What is taken for each column before anybody says otherwise. */
    static void begin(Form form, List<Line> lines) {
        for (Line line : lines) {
            form.with(field(line, "parameter"), parameter(line.column()));
            if (line.column().unitFrom() != Column.UnitFrom.ASSUMED) {
                form.with(field(line, "unit"), line.column().unit());
            }
        }
    }

    /** What was said of columns and is not what is taken anyhow; what cannot be is noted in the form. */
    static List<ColumnSaid> said(Form form, List<Line> lines) {
        List<ColumnSaid> said = new ArrayList<>();
        for (Line line : lines) {
            Parameter parameter = form.choice(field(line, "parameter"), Parameter.class);
            Unit unit = form.choice(field(line, "unit"), Unit.class);
            Column column = line.column();
            boolean isTaken = Objects.equals(parameter, parameter(column))
                    && (unit == null || unit == column.unit() || parameter == null);
            if (isTaken) {
                continue;
            }
            if (unit != null && (parameter == null || !unit.fits(parameter))) {
                form.refused(Refusal.invalid(field(line, "unit"), "drive-log.unit-fits"));
            } else {
                said.add(new ColumnSaid(column.name().strip(), parameter, unit));
            }
        }
        return said;
    }

    /** Units that are written in more than one way for the same thing stand once. */
    static List<Unit> units() {
        return Arrays.stream(Unit.values()).filter(unit -> unit != Unit.STATUS).toList();
    }

    private static @Nullable Parameter parameter(Column column) {
        return column.use() == Column.Use.READ || column.use() == Column.Use.UNKNOWN_UNIT ? column.parameter() : null;
    }

    private static String field(Line line, String name) {
        return "column[" + line.index() + "]." + name;
    }
}
