package org.bayhold.race;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.bayhold.audit.AuditAgainstFold;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.support.FreshBayhold;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Installs, flashes, sign-offs, handovers, strikings-out and withdrawals by sixteen people on the same few cars: no car
 * leaves that the record as it stood before would have held, and no record breaks. The audit of it says what a fold says.
 */
abstract class Race {
    private static final int RUSHES = Integer.getInteger("bayhold.race.rushes", 4);
    private static final int WRITES_OF_A_RUSH = 200;
    private static final int WITHDRAWALS = RUSHES;

    abstract FreshBayhold.Store store();

    @Test
    void nothingLeavesThatTheRecordHolds() {
        Tally tally = new Tally();
        List<String> cars = new ArrayList<>();
        try (FreshBayhold bayhold = FreshBayhold.withoutCars(store());
                Crowd crowd = new Crowd();
                Collisions collisions = Collisions.counted()) {
            Instant start = Instant.now();
            Duration cpu = cpu();
            for (int i = 0; i < RUSHES; i++) {
                cars.addAll(new Rush(bayhold.shop(), crowd, tally, true).run(WRITES_OF_A_RUSH));
            }
            for (int i = 0; i < WITHDRAWALS; i++) {
                cars.addAll(new Withdrawals(bayhold.shop(), crowd, tally).run());
            }
            Duration raced = Duration.between(start, Instant.now());
            Duration worked = cpu().minus(cpu);

            Judge judge = new Judge(bayhold.bean(DataSource.class))
                    .judge(cars.stream().map(UUID::fromString).toList());

            System.out.println(
                    "%s: %s in %d ms (%d ms of processor); %d entries, %d CLEAR handovers judged in %d ms; begun again: %s"
                            .formatted(
                                    getClass().getSimpleName(),
                                    tally,
                                    raced.toMillis(),
                                    worked.toMillis(),
                                    judge.entries(),
                                    judge.clearHandovers(),
                                    Duration.between(start.plus(raced), Instant.now())
                                            .toMillis(),
                                    collisions.byState()));
            List<UUID> ids = cars.stream().map(UUID::fromString).distinct().toList();
            AuditAgainstFold audit = AuditAgainstFold.of(bayhold, ids);
            System.out.println("%s: %d handovers audited, %d kinds of findings"
                    .formatted(getClass().getSimpleName(), audit.handoffs(), audit.kindsOfFindings()));
            assertThat(audit.differences()).isEmpty();
            assertThat(whereaboutsThatDiffer(bayhold, ids)).isEmpty();
            assertThat(audit.kindsOfFindings())
                    .as("an audit without findings proves little")
                    .isGreaterThan(1);
            assertThat(judge.violations()).isEmpty();
            assertThat(tally.serverErrors()).isEmpty();
            assertThat(collisions.byState()).doesNotContainKey(Collisions.UNIQUE);
            assertThat(judge.clearHandovers())
                    .as("a race in which nobody leaves proves nothing")
                    .isGreaterThan(20);
        }
    }

    /** The columns from which the day's list is made say what the facts say. */
    private static List<UUID> whereaboutsThatDiffer(FreshBayhold bayhold, List<UUID> cars) {
        JdbcClient columns = JdbcClient.create(bayhold.bean(DataSource.class));
        CarRecords records = bayhold.bean(CarRecords.class);
        return cars.stream()
                .filter(car -> {
                    boolean listed = columns.sql("select in_shop from vehicle where id = ?")
                            .param(car)
                            .query(Boolean.class)
                            .single();
                    return listed
                            != records.of(car)
                                    .at(Instant.now(), Instant.now())
                                    .stay()
                                    .inShop();
                })
                .toList();
    }

    private static Duration cpu() {
        return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
    }
}
