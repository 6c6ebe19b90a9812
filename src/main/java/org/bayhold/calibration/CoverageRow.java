package org.bayhold.calibration;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/** One part of one line of coverage; a line without parts has one row without a part. */
@Embeddable
class CoverageRow {
    private int lineNo;

    @Enumerated(EnumType.STRING)
    private Category category;

    private @Nullable String position;
    private @Nullable UUID partSpecId;
    private boolean factoryAllowed;
    private boolean noneAllowed;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected CoverageRow() {}

    private CoverageRow(int lineNo, CoverageLine line, @Nullable UUID partSpecId) {
        this.lineNo = lineNo;
        this.category = line.place().category();
        this.position = line.place().position();
        this.partSpecId = partSpecId;
        this.factoryAllowed = line.factoryAllowed();
        this.noneAllowed = line.noneAllowed();
    }

    static List<CoverageRow> rows(List<CoverageLine> lines) {
        List<CoverageRow> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            CoverageLine line = lines.get(i);
            if (line.partSpecIds().isEmpty()) {
                rows.add(new CoverageRow(i, line, null));
            }
            for (UUID partSpecId : line.partSpecIds()) {
                rows.add(new CoverageRow(i, line, partSpecId));
            }
        }
        return rows;
    }

    static List<CoverageLine> lines(List<CoverageRow> rows) {
        return Runs.of(rows, row -> row.lineNo).stream().map(CoverageRow::line).toList();
    }

    private static CoverageLine line(List<CoverageRow> rows) {
        CoverageRow first = rows.get(0);
        List<UUID> parts = rows.stream()
                .map(row -> row.partSpecId)
                .filter(Objects::nonNull)
                .map(Objects::requireNonNull)
                .toList();
        return new CoverageLine(
                new Place(first.category, first.position), parts, first.factoryAllowed, first.noneAllowed);
    }
}
