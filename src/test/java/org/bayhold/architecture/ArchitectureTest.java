package org.bayhold.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rules of the house that a compiler does not hold, each of them seen to fail on what is made to break it. */
class ArchitectureTest {
    private static final JavaClasses MAIN = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.bayhold");
    private static final JavaClasses FIXTURES = new ClassFileImporter().importPackages("fixtures.broken");

    /** A rule, and what its report on the fixtures has to name. */
    record Held(String name, ArchRule rule, List<String> reports) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Held> rules() {
        return Stream.of(
                new Held(
                        "time is an argument",
                        TimeRules.TIME_IS_AN_ARGUMENT,
                        List.of(
                                "java.time.Instant.now()",
                                "java.time.LocalDateTime.now()",
                                "java.lang.System.currentTimeMillis()",
                                "java.time.Clock.systemUTC()",
                                "java.util.Date.<init>()")),
                new Held(
                        "cores are pure",
                        PureRules.CORES_ARE_PURE,
                        List.of(
                                "buildsheet.Fold rests on org.springframework.util.StringUtils",
                                "buildsheet.Fold rests on jakarta.persistence.Entity")),
                new Held(
                        "only the named write",
                        WriteRules.ONLY_THE_NAMED_WRITE,
                        List.of(
                                "FactController.record",
                                "FactRows.save(",
                                "FactRows.flush(",
                                "FactRows.insertUnseen(",
                                "FactStore.rename(",
                                "CrudRepository.deleteAll(",
                                "RetuneItemRow.closed(")),
                new Held(
                        "only the journal has the database itself",
                        WriteRules.ONLY_THE_JOURNAL_HAS_THE_DATABASE_ITSELF,
                        List.of(
                                "jakarta.persistence.EntityManager",
                                "org.springframework.jdbc.core.simple.JdbcClient",
                                "org.springframework.transaction.support.TransactionTemplate")),
                new Held(
                        "only the template begins a write",
                        WriteRules.ONLY_THE_TEMPLATE_BEGINS_A_WRITE,
                        List.of("BackDoors is a transaction", "BackDoors.quietly() is a transaction")),
                new Held(
                        "modules keep their inside",
                        ShapeRules.MODULES_KEEP_THEIR_INSIDE,
                        List.of("buildsheet.FactRows>", "buildsheet.FactRow>", "buildsheet.FactController>")),
                new Held(
                        "nothing is fetched unasked",
                        ShapeRules.NOTHING_IS_FETCHED_UNASKED,
                        List.of("FactRow.before", "FactRow.tags")),
                new Held(
                        "rows are written once",
                        ShapeRules.ROWS_ARE_WRITTEN_ONCE,
                        List.of("FactRow.setNote", "FactRow.forget()", "RetuneItemRow.reopened()")),
                new Held(
                        "every route says who may",
                        ShapeRules.EVERY_ROUTE_SAYS_WHO_MAY,
                        List.of("FactController.record", "FactController$Pages.all")),
                new Held(
                        "repositories are plural",
                        ShapeRules.REPOSITORIES_ARE_PLURAL,
                        List.of("buildsheet.FactStore>")),
                new Held("no logging but slf4j", ShapeRules.NO_LOGGING_BUT_SLF4J, List.of("Printing")),
                new Held(
                        "no standard streams",
                        ShapeRules.NO_STANDARD_STREAMS,
                        List.of("java.lang.System.out", "java.lang.System.err")));
    }

    @ParameterizedTest
    @MethodSource("rules")
    void theCodeKeeps(Held held) {
        held.rule().check(MAIN);
    }

    @ParameterizedTest
    @MethodSource("rules")
    void aBreachIsReported(Held held) {
        String report = held.rule().evaluate(FIXTURES).getFailureReport().toString();

        assertThat(report).contains(held.reports());
    }

    @Test
    void whatIsRightAmongTheFixturesIsNotReported() {
        assertThat(rules().map(held ->
                        held.rule().evaluate(FIXTURES).getFailureReport().toString()))
                .allSatisfy(report -> assertThat(report).doesNotContain("WellMade"));
    }

    /** A rule that names a class which is gone guards nothing. */
    @Test
    void theRulesNameWhatIsThere() {
        Set<String> there = MAIN.stream().map(JavaClass::getSimpleName).collect(Collectors.toSet());
        Set<String> named = new TreeSet<>(Set.of(TimeRules.EDGE));
        PureRules.CORES.values().forEach(named::addAll);
        WriteRules.WRITERS.forEach((through, writers) -> {
            named.add(through);
            named.addAll(writers);
        });

        assertThat(there).containsAll(named);
    }

    @Test
    void theMovesOfRowsAreThere() {
        WriteRules.MOVES.forEach((row, moves) -> assertThat(MAIN.stream()
                        .filter(type -> type.getSimpleName().equals(row))
                        .flatMap(type -> type.getMethods().stream())
                        .map(method -> method.getName()))
                .containsAll(moves));
    }
}
