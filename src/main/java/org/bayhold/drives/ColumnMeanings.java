package org.bayhold.drives;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.drivelog.MappedColumn;
import org.bayhold.drivelog.Parameter;
import org.bayhold.drivelog.Unit;
import org.bayhold.identity.Call;
import org.bayhold.journal.Chains;
import org.bayhold.journal.Ids;
import org.bayhold.journal.WriteTemplate;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What columns of logs hold, as the shop knows from its own tools. The last word on a heading counts. */
@Component
class ColumnMeanings {
    static final String TOLD = "COLUMN_MEANING_TOLD";

    private final ColumnMeaningRows rows;
    private final WriteTemplate writes;

    ColumnMeanings(ColumnMeaningRows rows, WriteTemplate writes) {
        this.rows = rows;
        this.writes = writes;
    }

    /**
     * A meaning, as the journal says it.
     *
     * @param parameter null where it is not to be read
     * @param unit null where the file says it, or where it is the usual one
     */
    record Told(
            String name,
            @Nullable Parameter parameter,
            @Nullable Unit unit) {}

    /** By heading, in the order in which headings were first told. */
    Map<String, MappedColumn> all() {
        Map<String, MappedColumn> all = new LinkedHashMap<>();
        for (ColumnMeaningRow row : rows.findAllByOrderById()) {
            Parameter parameter = row.parameter() == null ? null : Parameter.valueOf(row.parameter());
            Unit unit = row.unit() == null ? null : Unit.valueOf(row.unit());
            all.put(row.name(), new MappedColumn(parameter, unit));
        }
        return all;
    }

    /** By heading: what the shop knows, and before that what was said of one file. */
    Map<String, MappedColumn> with(List<ColumnSaid> columns) {
        Map<String, MappedColumn> all = all();
        columns.forEach(said -> {
            all.keySet().removeIf(name -> isSame(name, said.name()));
            all.put(said.name(), new MappedColumn(said.parameter(), said.unit()));
        });
        return all;
    }

    /** The same, of these headings alone. */
    List<ColumnSaid> of(List<ColumnSaid> columns, List<String> headings) {
        return with(columns).entrySet().stream()
                .filter(known -> headings.stream().anyMatch(heading -> isSame(heading, known.getKey())))
                .map(known -> new ColumnSaid(
                        known.getKey(),
                        known.getValue().parameter(),
                        known.getValue().unit()))
                .toList();
    }

    private static boolean isSame(String heading, String other) {
        return heading.strip().equalsIgnoreCase(other.strip());
    }

    /** Tells those that are not known so already; the meanings of all other headings stay. */
    void tell(Call call, List<ColumnSaid> columns) {
        Map<String, MappedColumn> known = all();
        List<ColumnSaid> fresh = columns.stream()
                .filter(said -> !new MappedColumn(said.parameter(), said.unit()).equals(known.get(said.name())))
                .toList();
        if (fresh.isEmpty()) {
            return;
        }
        writes.write(call.request(), Chains.SHOP, Integer.class, chain -> {
            for (ColumnSaid said : fresh) {
                UUID id = Ids.next();
                Told told = new Told(said.name(), said.parameter(), said.unit());
                rows.save(new ColumnMeaningRow(id, told, chain.recordedAt(), chain.by()));
                chain.append(TOLD, id, chain.recordedAt(), told);
            }
            return fresh.size();
        });
    }
}
