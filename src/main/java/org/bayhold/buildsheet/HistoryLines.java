package org.bayhold.buildsheet;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.StringJoiner;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.PartSpec;
import org.bayhold.identity.Caller;
import org.bayhold.journal.Journal;
import org.bayhold.page.SiteTime;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** A car's record in words, the newest first. */
@Component
public class HistoryLines {
    /** A record that came later than this says so. */
    private static final Duration LATE = Duration.ofMinutes(2);

    private static final String ODOMETER = "odometerKm";

    /** Fields that are said as they are, with the word for them, in this order. */
    public static final List<String> SAID = List.of(
            "serial",
            "ecuHardware",
            "calid",
            "cvn",
            "fileSha256",
            "reason",
            "limitations",
            "signedBy",
            "acknowledgedBy",
            "assignee",
            "performedBy",
            "note",
            "text",
            ODOMETER);

    /** Fields that hold a constant, whose label is said. */
    private static final List<String> LABELLED = List.of("usage", "source");

    private final Histories histories;
    private final Journal journal;
    private final CarRecords records;
    private final FactViews views;
    private final Catalog catalog;
    private final Calibrations calibrations;
    private final CodeWords codeWords;
    private final SiteTime time;
    private final MessageSource messages;

    HistoryLines(
            Histories histories,
            Journal journal,
            CarRecords records,
            FactViews views,
            Catalog catalog,
            Calibrations calibrations,
            CodeWords codeWords,
            SiteTime time,
            MessageSource messages) {
        this.histories = histories;
        this.journal = journal;
        this.records = records;
        this.views = views;
        this.catalog = catalog;
        this.calibrations = calibrations;
        this.codeWords = codeWords;
        this.time = time;
        this.messages = messages;
    }

    public List<HistoryLine> of(UUID vehicleId, Instant knownAt, Caller caller) {
        List<HistoryView> history = new ArrayList<>(histories.of(vehicleId, knownAt, caller));
        Collections.reverse(history);
        Names names = names(history.stream().map(HistoryView::record).toList());
        return history.stream().map(view -> line(view, names, caller.units())).toList();
    }

    /** Each of these records in one line: what happened, at which place, with which part or calibration. */
    @Transactional(readOnly = true)
    public Map<UUID, String> told(Collection<UUID> ids) {
        List<Fact> facts = journal.entries(Set.copyOf(ids)).stream()
                .flatMap(entry -> records.fact(entry).stream())
                .toList();
        List<ObjectNode> flat = views.flat(facts);
        Names names = names(flat);
        Map<UUID, String> told = new HashMap<>();
        for (ObjectNode record : flat) {
            String what = what(String.valueOf(text(record, "kind")), record);
            String part = part(record, names);
            String with = part == null ? revision(record, names) : part;
            told.put(UUID.fromString(String.valueOf(text(record, "id"))), with == null ? what : what + ": " + with);
        }
        return told;
    }

    private record Names(Map<UUID, PartSpec> parts, Map<UUID, Revision> revisions) {}

    private Names names(Collection<? extends JsonNode> told) {
        Set<UUID> parts = new HashSet<>();
        Set<UUID> revisions = new HashSet<>();
        told.forEach(record -> {
            parts.addAll(ids(record, "partSpecId"));
            revisions.addAll(ids(record, "calibrationId"));
        });
        return new Names(
                catalog.specs(parts),
                calibrations.revisions(revisions).stream().collect(Collectors.toMap(Revision::id, r -> r)));
    }

    private static List<UUID> ids(JsonNode record, String field) {
        return record.findValues(field).stream()
                .filter(JsonNode::isString)
                .map(node -> UUID.fromString(node.asString()))
                .toList();
    }

    private HistoryLine line(HistoryView view, Names names, Units units) {
        HistoryView.Voiding voiding = view.voiding();
        String struck = voiding == null
                ? null
                : message(
                        "history.struck",
                        voiding.by(),
                        time.show(voiding.at()),
                        Objects.requireNonNullElse(voiding.reason(), ""));
        return new HistoryLine(
                view.id(),
                view.effectiveAt(),
                what(view.kind(), view.record()),
                detail(view, names, units),
                view.by(),
                struck,
                voiding == null && Voidings.isVoidable(view.kind()));
    }

    private String what(String kind, JsonNode record) {
        StringBuilder what = new StringBuilder(message("fact." + kind));
        for (String field : List.of("action", "outcome", "verdict", "basis", "travel")) {
            String code = text(record, field);
            if (code != null) {
                what.append(": ").append(message(field + "." + code));
            }
        }
        String category = text(record, "category");
        return category == null
                ? what.toString()
                : what.append(", ").append(place(category, record)).toString();
    }

    private String place(String category, JsonNode record) {
        String position = text(record, "position");
        String label = message("category." + category);
        return position == null ? label : label + ", " + position;
    }

    private String detail(HistoryView view, Names names, Units units) {
        JsonNode record = view.record();
        StringJoiner detail = new StringJoiner(" · ");
        String revision = revision(record, names);
        if (revision != null) {
            detail.add(revision);
        }
        part(record, names, detail);
        for (JsonNode line : list(record, "lines")) {
            String part = part(line, names);
            String state = message("fitted." + text(line, "state"));
            detail.add(place(String.valueOf(text(line, "category")), line) + ": " + (part == null ? state : part));
        }
        for (JsonNode cause : list(record, "causes")) {
            detail.add(message("retune.cause." + text(cause, "code")));
        }
        for (String field : SAID) {
            String value = text(record, field);
            if (value != null) {
                detail.add(message("history." + field, field.equals(ODOMETER) ? kilometres(value, units) : value));
            }
        }
        for (String field : LABELLED) {
            String code = text(record, field);
            if (code != null && !code.equals(Fact.Source.SHOP.name())) {
                detail.add(message(field + "." + code));
            }
        }
        for (JsonNode finding : list(record, "findings")) {
            detail.add(message("drivelog.code." + text(finding, "code")));
        }
        codeWords.of(record).forEach(detail::add);
        String promised = text(record, "promisedAt");
        if (promised != null) {
            detail.add(message("history.promisedAt", time.show(Instant.parse(promised))));
        }
        if (view.recordedAt().isAfter(view.effectiveAt().plus(LATE))) {
            detail.add(message("history.late", time.show(view.recordedAt())));
        }
        return detail.toString();
    }

    private static String kilometres(String value, Units units) {
        return units.show(Double.parseDouble(value), "km");
    }

    private static void part(JsonNode record, Names names, StringJoiner detail) {
        String part = part(record, names);
        if (part != null) {
            detail.add(part);
        }
    }

    private static @Nullable String part(JsonNode record, Names names) {
        String id = text(record, "partSpecId");
        PartSpec spec = id == null ? null : names.parts().get(UUID.fromString(id));
        return spec == null ? null : spec.name();
    }

    private static @Nullable String revision(JsonNode record, Names names) {
        String id = text(record, "calibrationId");
        Revision revision = id == null ? null : names.revisions().get(UUID.fromString(id));
        return revision == null ? null : revision.name() + " " + revision.revision();
    }

    private static Iterable<JsonNode> list(JsonNode record, String field) {
        JsonNode list = record.get(field);
        return list == null || !list.isArray() ? List.of() : list;
    }

    private static @Nullable String text(JsonNode record, String field) {
        JsonNode value = record.get(field);
        return value == null || value.isNull() || value.isContainer() ? null : value.asString();
    }

    private String message(String key, Object... arguments) {
        return Objects.requireNonNull(messages.getMessage(key, arguments, key, Locale.ENGLISH));
    }
}
