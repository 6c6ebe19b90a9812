package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.bayhold.journal.CanonicalJson;
import org.bayhold.obd.Reading;
import org.junit.jupiter.api.Test;

/** Entries from before a field was added read as they did, and are written again byte for byte as they were hashed. */
class FactsOfBeforeTest {
    private static final String STAMP =
            "\"stamp\":{\"by\":\"00000000-0000-0001-0000-000000000001\",\"effectiveAt\":\"2026-02-02T09:00:00Z\","
                    + "\"id\":\"00000000-0000-0001-0000-000000000002\",\"recordedAt\":\"2026-02-02T09:00:00Z\",\"seq\":3,"
                    + "\"vehicleId\":\"00000000-0000-0001-0000-000000000003\"}";

    private final CanonicalJson json = new CanonicalJson();

    @Test
    void anEcuCheckWithoutTroubleCodes() {
        String old = "{\"reading\":{\"calid\":\"CALA\",\"cvn\":\"2D99C26C\"},\"source\":\"SHOP\"," + STAMP + "}";

        Fact.ReadBack fact = json.read(old, Fact.ReadBack.class);

        assertThat(fact.reading()).isEqualTo(new Reading("CALA", "2D99C26C", null));
        assertThat(fact.troubleCodes()).isNull();
        assertThat(fact.readiness()).isNull();
        assertThat(json.write(fact)).isEqualTo(old);
    }

    @Test
    void aHandoverThatTheFirstRulesDecided() {
        String old = "{\"basis\":\"CLEAR\",\"decision\":\"{}\",\"failedChecks\":0," + STAMP + "}";

        Fact.HandedOver fact = json.read(old, Fact.HandedOver.class);

        assertThat(fact.rulesOfThen()).isEqualTo(1);
        assertThat(json.write(fact)).isEqualTo(old);
    }
}
