package org.bayhold.drivelog;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Rows that are readings: all of one time make one moment. {@code docs/drive-log.md, D2 and D5}. */
final class ReadingRows extends RowsHandler {
    /** So many different names may stand in a file; beyond, new ones are no more looked at. */
    private static final int NAMES = 10_000;

    private static final int LONGEST_NAME = 200;

    private final Shape.Readings shape;
    private final Recognition recognition;
    private final Numbers numbers;
    private final Times times;
    private final Map<String, Column> columns = new HashMap<>();
    private final Map<Parameter, String> nameOf = new HashMap<>();
    private final char[][] parts = new char[4][LONGEST_NAME];
    private final int[] lengths = new int[4];
    private double time = Double.NaN;
    private long lastRow;

    private static final int AT_TIME = 0;
    private static final int AT_NAME = 1;
    private static final int AT_VALUE = 2;
    private static final int AT_UNIT = 3;

    ReadingRows(Layout layout, Shape.Readings shape, Recognition recognition, Frame frame, Flaws flaws) {
        super(layout, frame, flaws);
        this.shape = shape;
        this.recognition = recognition;
        numbers = new Numbers(layout.decimal());
        times = new Times(numbers, layout.timeFactor());
    }

    @Override
    void begin() {
        Arrays.fill(lengths, 0);
    }

    @Override
    void field(int index, char[] buffer, int offset, int length) {
        if (index == shape.time()) {
            keep(AT_TIME, buffer, offset, length);
        } else if (index == shape.name()) {
            keep(AT_NAME, buffer, offset, length);
        } else if (index == shape.value()) {
            keep(AT_VALUE, buffer, offset, length);
        } else if (index == shape.unit()) {
            keep(AT_UNIT, buffer, offset, length);
        }
    }

    private void keep(int part, char[] buffer, int offset, int length) {
        lengths[part] = Math.min(length, LONGEST_NAME);
        System.arraycopy(buffer, offset, parts[part], 0, lengths[part]);
    }

    @Override
    void end() {
        double now = times.parse(parts[AT_TIME], 0, lengths[AT_TIME]);
        if (!Double.isFinite(now)) {
            frame.bringTime(now, row());
            flaws.count(Flaw.Kind.ROW_WITHOUT_TIME, row());
            return;
        }
        if (now != time && !Double.isNaN(time)) {
            frame.end(time, lastRow);
        }
        time = now;
        lastRow = row();
        Column column = column();
        if (column == null || column.parameter() == null || column.unit() == null) {
            return;
        }
        int parameter = column.parameter().index();
        double value = parameter == STATUS
                ? FuelStatus.parse(parts[AT_VALUE], 0, lengths[AT_VALUE])
                : column.unit().convert(numbers.parse(parts[AT_VALUE], 0, lengths[AT_VALUE]));
        frame.bring(parameter, value, row());
    }

    private @Nullable Column column() {
        String name = new String(parts[AT_NAME], 0, lengths[AT_NAME]);
        Column known = columns.get(name);
        if (known != null || columns.size() >= NAMES) {
            return known;
        }
        Column column = recognition.column(name, new String(parts[AT_UNIT], 0, lengths[AT_UNIT]));
        Parameter parameter = column.parameter();
        if (parameter == Parameter.TIME) {
            column = Column.unknown(name);
        } else if (parameter != null && column.isRead() && nameOf.putIfAbsent(parameter, name) != null) {
            column = column.repeated();
        }
        columns.put(name, column);
        return column;
    }

    @Override
    void finish() {
        if (!Double.isNaN(time)) {
            frame.end(time, lastRow);
        }
    }
}
