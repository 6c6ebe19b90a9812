package org.bayhold.drivelog;

import java.util.List;
import org.bayhold.drivelog.Flaw.Kind;
import org.jspecify.annotations.Nullable;

/** Rows that are moments. {@code docs/drive-log.md, D2 and D5}. */
final class SampleRows extends RowsHandler {
    private static final int NOT_READ = -1;

    private final int[] parameters;
    private final double[] factors;
    private final double[] offsets;
    private final Numbers numbers;
    private final Times times;
    private final boolean hasTime;
    private final double sampleSeconds;
    private long samples;
    private boolean isTooWide;

    SampleRows(Layout layout, List<Column> columns, @Nullable Double sampleSeconds, Frame frame, Flaws flaws) {
        super(layout, frame, flaws);
        numbers = new Numbers(layout.decimal());
        times = new Times(numbers, layout.timeFactor());
        hasTime = layout.has(Parameter.TIME);
        this.sampleSeconds = sampleSeconds == null ? 0 : sampleSeconds;
        parameters = new int[columns.size()];
        factors = new double[columns.size()];
        offsets = new double[columns.size()];
        for (int i = 0; i < columns.size(); i++) {
            Parameter parameter = columns.get(i).parameter();
            Unit unit = columns.get(i).unit();
            boolean isRead = columns.get(i).isRead() && parameter != null && unit != null;
            parameters[i] = isRead && parameter != null ? parameter.index() : NOT_READ;
            factors[i] = unit == null ? 1 : unit.factor();
            offsets[i] = unit == null ? 0 : unit.offset();
        }
    }

    @Override
    void begin() {
        isTooWide = false;
    }

    @Override
    void field(int index, char[] buffer, int offset, int length) {
        if (index >= parameters.length) {
            isTooWide |= length > 0;
            return;
        }
        int parameter = parameters[index];
        if (parameter == NOT_READ) {
            return;
        }
        if (parameter == TIME) {
            frame.bringTime(times.parse(buffer, offset, length), row());
        } else if (parameter == STATUS) {
            frame.bring(STATUS, FuelStatus.parse(buffer, offset, length), row());
        } else {
            double value = numbers.parse(buffer, offset, length);
            frame.bring(parameter, value * factors[index] + offsets[index], row());
        }
    }

    @Override
    void end() {
        if (isTooWide) {
            flaws.count(Kind.ROW_TOO_WIDE, row());
            frame.drop();
            return;
        }
        if (getFieldCount() < parameters.length) {
            flaws.count(Kind.ROW_TOO_SHORT, row());
        }
        double time = hasTime ? frame.time() : samples * sampleSeconds;
        samples++;
        if (Double.isNaN(time)) {
            flaws.count(Kind.ROW_WITHOUT_TIME, row());
            frame.drop();
        } else {
            frame.end(time, row());
        }
    }
}
