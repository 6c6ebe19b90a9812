package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.FactViews;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Who planned what of a retune item. */
@Component
class PlanHistory {
    private final CarRecords records;
    private final FactViews views;

    PlanHistory(CarRecords records, FactViews views) {
        this.records = records;
        this.views = views;
    }

    /** What somebody changed; null where they left it. */
    record Change(
            String by,
            Instant at,
            @Nullable String assignee,
            @Nullable Instant promisedAt,
            @Nullable String note) {}

    /** The change that was made last. */
    @Transactional(readOnly = true)
    public Optional<Change> last(RetuneItemView item) {
        return records.of(item.vehicleId()).facts().stream()
                .filter(fact -> fact instanceof Fact.RetunePlanned planned
                        && planned.itemId().equals(item.id()))
                .reduce((earlier, later) -> later)
                .map(fact -> change(fact, views.flat(List.of(fact)).get(0)));
    }

    private static Change change(Fact fact, ObjectNode flat) {
        return new Change(
                flat.get("by").asString(),
                fact.stamp().recordedAt(),
                text(flat.get("assignee")),
                ((Fact.RetunePlanned) fact).promisedAt(),
                text(flat.get("note")));
    }

    private static @Nullable String text(@Nullable JsonNode node) {
        return node == null || node.isNull() ? null : node.asString();
    }
}
