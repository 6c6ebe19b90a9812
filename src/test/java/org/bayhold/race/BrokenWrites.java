package org.bayhold.race;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.bayhold.buildsheet.UnlockedHandover;
import org.bayhold.journal.BrokenTemplate;
import org.bayhold.journal.Database;
import org.bayhold.journal.Fault;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;

/** The race with a step of the write template taken out: if the judge saw nothing wrong then, it would see nothing. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
abstract class BrokenWrites {
    private static final Duration PATIENCE = Duration.ofMinutes(3);
    private static final int WRITES_OF_A_RUSH = 150;
    /** Where it is tried again until something is seen, most is seen at once. */
    private static final int WRITES_OF_A_TRY = 60;

    private final Crowd crowd = new Crowd();
    private final Tally tally = new Tally();
    private FreshBayhold bayhold;
    private BrokenTemplate template;
    private UnlockedHandover handover;

    abstract FreshBayhold.Store store();

    @BeforeAll
    void start() {
        bayhold = FreshBayhold.withoutCars(store(), application -> {
            BrokenTemplate.insteadOfTheTemplate(application);
            handover = new UnlockedHandover(application, () -> template.fault() == Fault.NO_FIRST_STEP);
            application.getBeanFactory().addBeanPostProcessor(handover);
        });
        template = bayhold.bean(BrokenTemplate.class);
        // everybody signs in before anything is broken
        new Rush(bayhold.shop(), crowd, tally, true).run(50);
    }

    @AfterEach
    void mend() {
        template.breakAt(Fault.NONE);
    }

    @AfterAll
    void close() {
        bayhold.close();
        crowd.close();
    }

    @Test
    @Order(1)
    void withoutTheFirstStepTheSchemaStillLetsNothingThrough() {
        template.breakAt(Fault.NO_FIRST_STEP);
        try (Collisions collisions = Collisions.counted()) {
            // a withdrawal has no backstop: what keeps it from a handover is the lock alone
            Judge judge = judge(new Rush(bayhold.shop(), crowd, tally, false).run(WRITES_OF_A_RUSH));
            List<Violation> found = judge.violations();
            int handovers = judge.clearHandovers();
            System.out.println("%s: no first step, schema as it is: %d CLEAR handovers, begun again %s"
                    .formatted(getClass().getSimpleName(), handovers, collisions.byState()));
            // a refused sign-off appends nothing and may set the head back; the next write then stops at the primary
            // key
            assertThat(found).allMatch(violation -> violation.kind() == Violation.Kind.HEAD_ELSEWHERE);
            assertThat(handovers).isPositive();
            assertThat(collisions.byState()).containsKey(Collisions.UNIQUE);
        }
    }

    @Test
    @Order(2)
    void aTimeTakenBeforeTheLockIsNoticed() {
        isNoticed(
                Fault.TIME_BEFORE_THE_LOCK,
                shop -> new Rush(shop, crowd, tally, true).run(WRITES_OF_A_TRY),
                violation -> violation.kind() == Violation.Kind.TIME_RUNS_BACKWARDS);
    }

    @Test
    @Order(3)
    void aRevisionThatIsNotHeldIsNoticed() {
        isNoticed(
                Fault.NOTHING_HELD,
                shop -> new Withdrawals(shop, crowd, tally).run(),
                violation -> violation.kind() == Violation.Kind.CLEAR_ON_A_WITHDRAWN_REVISION
                        || violation.kind() == Violation.Kind.WITHDRAWN_AND_NOBODY_CALLS);
    }

    /** The last: the database is spoilt by it. */
    @Test
    @Order(4)
    void withoutTheFirstStepAndTheSchemaTheGateIsOpen() {
        Backstops.drop(
                bayhold.bean(DataSource.class), bayhold.bean(Database.class).isPostgres());
        handover.withoutCondition();
        isNoticed(
                Fault.NO_FIRST_STEP,
                shop -> new Rush(shop, crowd, tally, true).run(WRITES_OF_A_TRY),
                Violation::opensTheGate);
    }

    private void isNoticed(Fault fault, Function<Shop, List<String>> race, Predicate<Violation> wanted) {
        template.breakAt(fault);
        Instant start = Instant.now();
        int writes = tally.writes();
        List<Violation> found = List.of();
        Collisions counting = Collisions.counted(); // and kept off the log
        try {
            while (found.stream().noneMatch(wanted)
                    && Duration.between(start, Instant.now()).compareTo(PATIENCE) < 0) {
                found = judge(race.apply(bayhold.shop())).violations();
            }
        } finally {
            counting.close();
        }
        System.out.println("%s: %s seen after %d ms, %d writes: %s"
                .formatted(
                        getClass().getSimpleName(),
                        fault,
                        Duration.between(start, Instant.now()).toMillis(),
                        tally.writes() - writes,
                        found.stream().collect(Collectors.groupingBy(Violation::kind, Collectors.counting()))));
        assertThat(found).as("seed and all, the judge sees nothing").anyMatch(wanted);
    }

    private Judge judge(List<String> cars) {
        return new Judge(bayhold.bean(DataSource.class))
                .judge(cars.stream().map(UUID::fromString).toList());
    }
}
