package org.bayhold.journal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;

/** Holds the personal data that is kept apart against the commitments to it that stand in the entries. */
@Component
class Commitments {
    private final JdbcClient jdbc;

    Commitments(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param hash of salt and text; null where they are erased, for good and rightly */
    private record Kept(UUID chain, @Nullable String hash) {}

    /** By entry, what is wrong with a text that it refers to. */
    Map<UUID, String> unkept(List<Entry> entries) {
        Map<UUID, List<Personal>> references = new HashMap<>();
        Set<UUID> ids = new HashSet<>();
        for (Entry entry : entries) {
            List<Personal> found = new ArrayList<>();
            collect(entry.record(), found);
            if (!found.isEmpty()) {
                references.put(entry.id(), found);
                found.forEach(reference -> ids.add(reference.id()));
            }
        }
        Map<UUID, Kept> kept = ids.isEmpty() ? Map.of() : kept(ids);
        Map<UUID, String> wrong = new HashMap<>();
        for (Entry entry : entries) {
            for (Personal reference : references.getOrDefault(entry.id(), List.of())) {
                String what = wrong(entry, reference, kept.get(reference.id()));
                if (what != null) {
                    wrong.putIfAbsent(entry.id(), what);
                }
            }
        }
        return wrong;
    }

    private static @Nullable String wrong(Entry entry, Personal reference, @Nullable Kept kept) {
        if (kept == null) {
            return "the text that it refers to is missing in personal_data";
        }
        if (!kept.chain().equals(entry.chain())) {
            return "the text that it refers to is kept for another chain";
        }
        return kept.hash() == null || kept.hash().equals(reference.sha256())
                ? null
                : "the text that it refers to was changed in personal_data";
    }

    private static void collect(JsonNode node, List<Personal> found) {
        JsonNode id = node.get("id");
        JsonNode sha256 = node.get("sha256");
        if (node.size() == 2 && id != null && id.isString() && sha256 != null && sha256.isString()) {
            found.add(new Personal(UUID.fromString(id.stringValue()), sha256.stringValue()));
        } else {
            node.forEach(below -> collect(below, found));
        }
    }

    private Map<UUID, Kept> kept(Set<UUID> ids) {
        Map<UUID, Kept> kept = new HashMap<>();
        jdbc.sql("select id, chain_id, salt, text from personal_data where id in (:ids)")
                .param("ids", ids)
                .query(row -> {
                    kept.put(
                            row.getObject(1, UUID.class),
                            new Kept(row.getObject(2, UUID.class), hash(row.getBytes(3), row.getString(4))));
                });
        return kept;
    }

    private static @Nullable String hash(byte @Nullable [] salt, @Nullable String text) {
        return salt == null || text == null ? null : Hashing.sha256(salt, text.getBytes(StandardCharsets.UTF_8));
    }
}
