package org.bayhold.race;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Stamp;
import org.bayhold.calibration.CalibrationMap;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.obd.Reading;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** What the entries of the journal say, from their bytes alone. */
final class Said {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private Said() {}

    static Registration registration(Chain.Row row) {
        JsonNode said = row.record();
        return new Registration(
                row.id(),
                Baseline.valueOf(text(said, "baseline")),
                text(said, "ecuHardware"),
                new Reading(textOrNull(said, "factoryCalid"), textOrNull(said, "factoryCvn"), null),
                row.recordedAt());
    }

    /** The facts among the entries, in their order. */
    static List<Fact> facts(UUID chain, List<Chain.Row> rows) {
        List<Fact> facts = new ArrayList<>();
        for (Chain.Row row : rows) {
            kind(row.kind()).ifPresent(kind -> {
                Stamp stamp = new Stamp(row.id(), chain, row.seq(), row.effectiveAt(), row.recordedAt(), row.by());
                ObjectNode whole = ((ObjectNode) row.record()).deepCopy();
                whole.set("stamp", JSON.valueToTree(stamp));
                facts.add(JSON.treeToValue(whole, kind));
            });
        }
        return facts;
    }

    /** RETUNE_OPENED is said of a RetuneOpened; empty for an entry that is no fact of a car. */
    private static Optional<Class<? extends Fact>> kind(String name) {
        String type = Arrays.stream(name.split("_"))
                .map(word -> word.charAt(0) + word.substring(1).toLowerCase(java.util.Locale.ROOT))
                .collect(Collectors.joining());
        try {
            return Optional.of(Class.forName(Fact.class.getName() + "$" + type).asSubclass(Fact.class));
        } catch (ClassNotFoundException e) {
            return Optional.empty();
        }
    }

    /** Every revision that was ever issued, with its withdrawal. */
    static List<Revision> revisions(DataSource database) {
        return JdbcClient.create(database)
                .sql("select chain_id from chain_head where kind = 'CALIBRATION' order by chain_id")
                .query(UUID.class)
                .list()
                .stream()
                .map(id -> revision(Chain.read(database, id)))
                .toList();
    }

    private static Revision revision(Chain chain) {
        Chain.Row issued = only(chain, "CALIBRATION_ISSUED").orElseThrow();
        Instant withdrawnAt =
                only(chain, "CALIBRATION_WITHDRAWN").map(Chain.Row::recordedAt).orElse(null);
        JsonNode said = issued.record();
        JsonNode maps = said.has("maps") ? said.path("maps") : JSON.createArrayNode();
        return new Revision(
                chain.id(),
                text(said, "name"),
                text(said, "revision"),
                text(said, "ecuHardware"),
                new Reading(textOrNull(said, "calid"), textOrNull(said, "cvn"), textOrNull(said, "fileSha256")),
                Purpose.valueOf(text(said, "purpose")),
                List.of(JSON.treeToValue(said.path("coverage"), CoverageLine[].class)),
                List.of(JSON.treeToValue(maps, CalibrationMap[].class)),
                "COMPRESSION".equals(textOrNull(said.path("assumes"), "ignition")),
                issued.recordedAt(),
                withdrawnAt);
    }

    private static Optional<Chain.Row> only(Chain chain, String kind) {
        return chain.rows().stream().filter(row -> row.isOf(kind)).findFirst();
    }

    private static String text(JsonNode said, String field) {
        return said.path(field).asString();
    }

    private static String textOrNull(JsonNode said, String field) {
        return said.path(field).isString() ? said.path(field).asString() : null;
    }
}
