package org.bayhold.race;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One chain of the journal, read with plain SQL past everything that the application has for it. */
record Chain(UUID id, List<Row> rows) {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** One entry: its columns, and the bytes that were hashed. */
    record Row(
            long seq,
            UUID id,
            String kind,
            Instant effectiveAt,
            Instant recordedAt,
            UUID by,
            String body,
            String prevHash,
            String hash) {
        JsonNode json() {
            return JSON.readTree(body);
        }

        JsonNode record() {
            return json().path("record");
        }

        boolean isOf(String wanted) {
            return kind.equals(wanted);
        }

        /** The columns say what the bytes say, and the hash is that of the bytes. */
        boolean isWhole(UUID chain) {
            JsonNode json = json();
            return hash.equals(sha256(body))
                    && chain.toString().equals(json.path("chain").asString(""))
                    && seq == json.path("seq").asLong(-1)
                    && id.toString().equals(json.path("id").asString(""))
                    && kind.equals(json.path("kind").asString(""))
                    && effectiveAt.equals(Instant.parse(json.path("effectiveAt").asString("")))
                    && recordedAt.equals(Instant.parse(json.path("recordedAt").asString("")))
                    && by.toString().equals(json.path("by").asString(""))
                    && prevHash.equals(json.path("prev").asString(""));
        }
    }

    static Chain read(DataSource database, UUID id) {
        List<Row> rows = JdbcClient.create(database)
                .sql("select * from journal_entry where chain_id = ? order by seq, recorded_at, id")
                .param(id)
                .query((row, number) -> row(row))
                .list();
        return new Chain(id, rows);
    }

    private static Row row(ResultSet row) throws SQLException {
        return new Row(
                row.getLong("seq"),
                row.getObject("id", UUID.class),
                row.getString("kind"),
                row.getObject("effective_at", OffsetDateTime.class).toInstant(),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
                row.getObject("recorded_by", UUID.class),
                row.getString("body"),
                row.getString("prev_hash"),
                row.getString("hash"));
    }

    private static String sha256(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
