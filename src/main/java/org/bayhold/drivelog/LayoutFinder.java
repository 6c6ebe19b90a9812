package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.bayhold.drivelog.Head.Row;
import org.jspecify.annotations.Nullable;

/** Finds out from the first rows how a file is laid out. {@code docs/drive-log.md, D1 to D5}. */
final class LayoutFinder {
    static final char[] SEPARATORS = {';', '\t', ',', '|'};
    /** So many rows may stand above the header: loggers write notes there. */
    private static final int ABOVE_HEADER = 30;

    private static final Set<String> NAME = Set.of("parameter", "parametername", "name", "pid", "signal", "channel");
    private static final Set<String> VALUE = Set.of("value", "reading", "parametervalue");
    private static final Set<String> UNIT = Set.of("unit", "units", "uom");

    private static final Pattern THOUSANDS_AND_COMMA = Pattern.compile("[+-]?\\d{1,3}([.]\\d{3})+,\\d+");
    private static final Pattern WITH_POINT = Pattern.compile("[+-]?\\d*[.]\\d+([eE][+-]?\\d+)?");
    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d*,\\d+([eE][+-]?\\d+)?");

    private final Recognition recognition;
    private final boolean hasRate;

    LayoutFinder(Recognition recognition, boolean hasRate) {
        this.recognition = recognition;
        this.hasRate = hasRate;
    }

    /** A header that may be it. */
    private record Candidate(char separator, List<Row> rows, int header, Shape shape, List<Column> columns) {
        /** How many parameters it brings, and on a tie how many columns. */
        long score() {
            return columns.stream().filter(Column::isRead).count() * 10_000
                    + Math.min(9_999, rows.get(header).fields().size());
        }
    }

    Layout find(String text) throws RefusedLogException {
        Candidate best = null;
        long tableRow = 0;
        for (char separator : SEPARATORS) {
            List<Row> rows = Head.rows(text, separator);
            tableRow = tableRow == 0 ? tableRow(rows) : tableRow;
            Candidate candidate = candidate(separator, rows);
            if (candidate != null && (best == null || candidate.score() > best.score())) {
                best = candidate;
            }
        }
        if (best == null) {
            throw tableRow == 0
                    ? new RefusedLogException(Refused.NOT_A_TABLE, 1)
                    : new RefusedLogException(Refused.NO_RECOGNISED_PARAMETER, tableRow);
        }
        return layout(best);
    }

    /** The first of two rows that are cut into the same number of fields, more than one; 0 where there are none. */
    static long tableRow(List<Row> rows) {
        for (int i = 0; i + 1 < rows.size(); i++) {
            int fields = rows.get(i).fields().size();
            if (fields > 1 && rows.get(i + 1).fields().size() == fields && !isBinary(rows.get(i))) {
                return rows.get(i).line();
            }
        }
        return 0;
    }

    private static boolean isBinary(Row row) {
        return row.fields().stream().anyMatch(field -> field.indexOf('\0') >= 0);
    }

    private @Nullable Candidate candidate(char separator, List<Row> rows) {
        Candidate best = null;
        for (int i = 0; i < Math.min(ABOVE_HEADER, rows.size()); i++) {
            Candidate candidate = readings(separator, rows, i);
            if (candidate == null) {
                candidate = samples(separator, rows, i);
            }
            if (candidate != null && (best == null || candidate.score() > best.score())) {
                best = candidate;
            }
        }
        return best;
    }

    private @Nullable Candidate samples(char separator, List<Row> rows, int header) {
        List<Column> columns = new ArrayList<>();
        Set<Parameter> read = EnumSet.noneOf(Parameter.class);
        for (String heading : rows.get(header).fields()) {
            Column column = recognition.column(heading, "");
            Parameter parameter = column.parameter();
            columns.add(parameter != null && column.isRead() && !read.add(parameter) ? column.repeated() : column);
        }
        read.remove(Parameter.TIME);
        return read.isEmpty() ? null : new Candidate(separator, rows, header, new Shape.Samples(columns), columns);
    }

    private @Nullable Candidate readings(char separator, List<Row> rows, int header) {
        List<String> plain =
                rows.get(header).fields().stream().map(Names::plain).toList();
        int name = indexOf(plain, NAME);
        int value = indexOf(plain, VALUE);
        int time = -1;
        for (int i = 0; i < plain.size() && time < 0; i++) {
            time = recognition.column(rows.get(header).field(i), "").parameter() == Parameter.TIME ? i : -1;
        }
        if (name < 0 || value < 0 || name == time || value == time) {
            return null;
        }
        int unit = indexOf(plain, UNIT);
        Map<String, Column> columns = new LinkedHashMap<>();
        if (time >= 0) {
            String heading = rows.get(header).field(time);
            columns.put("", recognition.column(heading, ""));
        }
        for (Row row : rows.subList(header + 1, rows.size())) {
            columns.computeIfAbsent(row.field(name), heading -> recognition.column(heading, row.field(unit)));
        }
        boolean any =
                columns.values().stream().anyMatch(column -> column.isRead() && column.parameter() != Parameter.TIME);
        return any
                ? new Candidate(
                        separator,
                        rows,
                        header,
                        new Shape.Readings(time, name, value, unit),
                        new ArrayList<>(columns.values()))
                : null;
    }

    private static int indexOf(List<String> plain, Set<String> names) {
        for (int i = 0; i < plain.size(); i++) {
            if (names.contains(plain.get(i))) {
                return i;
            }
        }
        return -1;
    }

    private Layout layout(Candidate found) throws RefusedLogException {
        Row header = found.rows().get(found.header());
        List<Row> body = found.rows().subList(found.header() + 1, found.rows().size());
        Shape shape = found.shape();
        List<Column> columns = found.columns();
        Row units = body.isEmpty() ? null : body.get(0);
        if (shape instanceof Shape.Samples && units != null && isRowOfUnits(units, columns)) {
            List<Column> withUnits = new ArrayList<>();
            for (int i = 0; i < columns.size(); i++) {
                withUnits.add(columns.get(i).withUnitOf(withoutBrackets(units.field(i))));
            }
            columns = withUnits;
            shape = new Shape.Samples(withUnits);
            body = body.subList(1, body.size());
        }
        int time = timeColumn(shape);
        if (time < 0 && !(hasRate && shape instanceof Shape.Samples)) {
            throw new RefusedLogException(Refused.NO_TIME, header.line());
        }
        if (body.isEmpty()) {
            throw new RefusedLogException(Refused.NO_ROWS, header.line());
        }
        refuseRowsThatDoNotFit(header, body);
        char decimal = decimal(found.separator(), shape, body);
        Column timeColumn = columns.stream()
                .filter(column -> column.isRead() && column.parameter() == Parameter.TIME)
                .findFirst()
                .orElse(null);
        TimeScale scale = TimeScale.of(body, time, new Numbers(decimal), timeColumn);
        return new Layout(
                found.separator(),
                decimal,
                shape,
                columns,
                header.line(),
                body.get(0).line(),
                scale.factor(),
                scale.typicalSeconds());
    }

    private static int timeColumn(Shape shape) {
        if (shape instanceof Shape.Readings readings) {
            return readings.time();
        }
        List<Column> columns = ((Shape.Samples) shape).columns();
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).isRead() && columns.get(i).parameter() == Parameter.TIME) {
                return i;
            }
        }
        return -1;
    }

    private static String withoutBrackets(String text) {
        return text.replaceAll("[\\[\\]{}]", "").replaceAll("^\\s*\\((.*)\\)\\s*$", "$1");
    }

    /** No number in it, and at least one unit of the column above. */
    private static boolean isRowOfUnits(Row row, List<Column> columns) {
        Numbers numbers = new Numbers('.');
        boolean any = false;
        for (int i = 0; i < columns.size(); i++) {
            Parameter parameter = columns.get(i).parameter();
            String text = withoutBrackets(row.field(i));
            if (parameter == null || text.isBlank()) {
                continue;
            }
            boolean startsAsANumber = text.strip().matches("[+-]?[.,]?\\d.*") && !text.contains("/");
            if (startsAsANumber || numbers.parse(text) != Numbers.NONE) {
                return false;
            }
            any |= Unit.of(parameter.dimension(), text) != null;
        }
        return any;
    }

    /** Commas that separate and commas of decimals cannot be told apart. */
    private static void refuseRowsThatDoNotFit(Row header, List<Row> body) throws RefusedLogException {
        int columns = header.fields().size();
        List<Row> wider = body.stream().filter(row -> row.width() > columns).toList();
        if (wider.size() * 2 > body.size()) {
            throw new RefusedLogException(
                    Refused.ROWS_DO_NOT_FIT_THE_HEADER, wider.get(0).line());
        }
    }

    /** A comma only where one is seen between digits, no point is, and it is not the separator (or stands in quotes). */
    private static char decimal(char separator, Shape shape, List<Row> body) {
        int[] read = shape instanceof Shape.Readings readings
                ? new int[] {readings.value(), readings.time()}
                : indexesRead(((Shape.Samples) shape).columns());
        int points = 0;
        int commas = 0;
        for (Row row : body) {
            for (int index : read) {
                String text = row.field(index).strip();
                if (THOUSANDS_AND_COMMA.matcher(text).matches()) {
                    return ',';
                }
                points += WITH_POINT.matcher(text).matches() ? 1 : 0;
                commas += WITH_COMMA.matcher(text).matches() ? 1 : 0;
            }
        }
        return commas > 0 && (points == 0 || (commas > points && separator != ',')) ? ',' : '.';
    }

    private static int[] indexesRead(List<Column> columns) {
        int[] all = new int[columns.size()];
        int count = 0;
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).isRead()) {
                all[count] = i;
                count++;
            }
        }
        return Arrays.copyOf(all, count);
    }
}
