package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.bayhold.support.Answer;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The journal verified by the server, and by whoever has its export. */
public abstract class JournalOverHttp implements OnADatabase {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @Test
    void theServerFindsTheRecordIntact() {
        FinishedCar car = shop().finishesACar();
        car.car().handsOver();

        Answer verification =
                shop().as(Role.AUDITOR).get("/journal/verification").is(200);

        assertThat(verification.json().path("intact").asBoolean())
                .as(verification.text())
                .isTrue();
        assertThat(verification.field("firstBroken")).isEmpty();
        assertThat(verification.json().path("entries").asLong()).isGreaterThan(5);
    }

    @Test
    void theExportCanBeVerifiedByAnybody() {
        FinishedCar car = shop().finishesACar();
        Answer handoff = car.car().handsOver();

        Answer export = shop().as(Role.AUDITOR).get("/journal/export").is(200);

        assertThat(export.header("Content-Type")).startsWith("application/x-ndjson");
        List<String> lines = export.text().lines().toList();
        Map<String, String> last = new HashMap<>();
        Map<String, Long> places = new HashMap<>();
        for (String line : lines) {
            JsonNode entry = JSON.readTree(line);
            assertThat(entry.propertyNames()).containsExactly("body", "hash");
            String body = entry.path("body").stringValue();
            String hash = entry.path("hash").stringValue();
            assertThat(sha256(body)).as(line).isEqualTo(hash);
            JsonNode said = JSON.readTree(body);
            String chain = said.path("chain").stringValue();
            assertThat(said.path("prev").stringValue()).isEqualTo(last.getOrDefault(chain, "0".repeat(64)));
            assertThat(said.path("seq").asLong()).isEqualTo(places.merge(chain, 1L, Long::sum));
            last.put(chain, hash);
        }
        assertThat(export.text()).contains(handoff.id()).contains(car.readBack().id());
        assertThat((long) lines.size())
                .isEqualTo(shop().as(Role.AUDITOR)
                        .get("/journal/verification")
                        .is(200)
                        .json()
                        .path("entries")
                        .asLong());
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void onlyAuditorsAndManagersSeeTheJournal(Role role) {
        for (String path : List.of("/journal/verification", "/journal/export")) {
            Answer answer = shop().as(role).get(path);
            if (role == Role.MANAGER || role == Role.AUDITOR) {
                answer.is(200);
            } else {
                answer.isProblem(403, "forbidden");
            }
        }
    }

    private static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
