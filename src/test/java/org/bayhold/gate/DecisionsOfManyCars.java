package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.bayhold.buildsheet.Fact;
import org.bayhold.support.EveryKindOfRecord;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Many cars are read from their columns, one car from its journal: the gate says the same. docs/decisions/0011. */
abstract class DecisionsOfManyCars implements OnADatabase {
    private static final int YOUNGEST = 60;

    @Test
    void eachIsTheDecisionOnTheOneCar() {
        EveryKindOfRecord.in(shop());
        Part injectors = shop().injectors(440);
        shop().aCarCalibratedFor(injectors).fits(shop().injectors(600));
        shop().aCarCalibratedFor(injectors).handsOver();
        JdbcClient columns = JdbcClient.create(running().bean(DataSource.class));
        List<UUID> cars = columns.sql("select id from vehicle order by id desc limit " + YOUNGEST)
                .query(UUID.class)
                .list();
        Decisions decisions = running().bean(Decisions.class);

        shop().whilePolicySays("driveLogRequired", true, () -> {
            Map<UUID, Decision> ofEach = decisions.ofEach(cars);

            assertThat(ofEach).containsOnlyKeys(cars);
            for (UUID car : cars) {
                Decision one = decisions.of(car, null, null);
                assertThat(told(Objects.requireNonNull(ofEach.get(car)))).isEqualTo(told(one));
            }
            assertThat(reasons(ofEach.values()))
                    .as("what is all alike proves little")
                    .hasSizeGreaterThan(5);
            assertThat(ofEach.values()).anyMatch(decision -> decision.prediction() != null);
        });
    }

    /** All of it but the moment at which it was asked, and what people said. */
    private static List<Object> told(Decision decision) {
        return List.of(
                decision.car().registration(),
                decision.rules(),
                decision.checks(),
                decision.mismatches(),
                decision.verdict() + " " + decision.risk() + " " + decision.prediction(),
                decision.car().stay(),
                decision.car().openItem().map(Object::toString),
                decision.car().handoffs().stream()
                        .map(Fact::stamp)
                        .map(Object::toString)
                        .toList());
    }

    private static Set<Reason> reasons(Collection<Decision> decisions) {
        return decisions.stream()
                .flatMap(decision -> decision.failed().stream())
                .map(CheckResult::reason)
                .collect(Collectors.toSet());
    }
}
