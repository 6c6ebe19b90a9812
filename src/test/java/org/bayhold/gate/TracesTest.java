package org.bayhold.gate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.NumberAttribute;
import org.bayhold.catalog.PartAttributes;
import org.bayhold.catalog.Place;
import org.bayhold.page.Units;
import org.bayhold.prediction.Assumptions;
import org.bayhold.prediction.Build;
import org.bayhold.prediction.Input;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Predictions;
import org.bayhold.prediction.Seat;
import org.bayhold.prediction.Side;
import org.junit.jupiter.api.Test;
import org.springframework.context.support.ResourceBundleMessageSource;

/** How the numbers of a prediction come about, in words. */
class TracesTest {
    private static final List<List<Double>> TABLE =
            List.of(List.of(0.5, 1.0), List.of(1.0, 8.0), List.of(2.0, 40.0), List.of(4.0, 200.0));
    private static final List<List<Double>> OTHER =
            List.of(List.of(0.5, 1.1), List.of(1.0, 9.0), List.of(2.0, 60.0), List.of(4.0, 300.0));

    private final Traces traces = new Traces(messages());

    private static ResourceBundleMessageSource messages() {
        ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
        messages.setBasename("messages");
        messages.setDefaultEncoding("UTF-8");
        return messages;
    }

    /** A car on which every formula has work, as {@code prediction.TraceTest} knows. */
    private static Prediction everything() {
        return Predictions.of(new Build(
                        List.of(
                                seat(Category.AIR_INTAKE, Map.of("sensorBoreMm", 73), Map.of("sensorBoreMm", 66)),
                                seat(Category.AIRFLOW_SENSOR, Map.of("transfer", TABLE), Map.of("transfer", OTHER)),
                                seat(Category.INJECTORS, injectors(650, 1.2), injectors(440, 1.0)),
                                seat(
                                        Category.FUEL_PRESSURE_REGULATOR,
                                        Map.of("basePressureKpa", 400, "reference", "ATMOSPHERE"),
                                        Map.of("basePressureKpa", 300, "reference", "MANIFOLD")),
                                seat(Category.FUEL, Map.of("ethanolPercent", 30), Map.of("ethanolPercent", 5)),
                                seat(
                                        Category.PRESSURE_SENSOR,
                                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 60),
                                        Map.of("kpaAtZeroVolts", 0, "kpaPerVolt", 50))),
                        Map.of("peakAirflowGPerS", 150),
                        180.0,
                        4))
                .orElseThrow();
    }

    private static Seat seat(Category category, Map<String, Object> fitted, Map<String, Object> calibratedFor) {
        return new Seat(Place.of(category), category.born(), Side.part(fitted), Side.part(calibratedFor), true);
    }

    private static Map<String, Object> injectors(double flow, double deadTime) {
        return Map.of("flowCcPerMin", flow, "ratedPressureKpa", 300, "deadTimeMs", deadTime);
    }

    @Test
    void everythingHasItsWords() {
        List<TraceLine.Group> groups = traces.of(everything(), Units.METRIC);
        assertThat(groups.get(0).place()).isNull();
        assertThat(groups)
                .extracting(TraceLine.Group::place)
                .contains("Injectors", "Fuel")
                .doesNotHaveDuplicates();
        assertThat(lines(groups)).allSatisfy(line -> {
            assertThat(line.name()).doesNotStartWith("formula.");
            assertThat(line.how()).doesNotStartWith("how.");
            assertThat(line.rule()).matches("P\\d+");
            assertThat(line.inputs()).allSatisfy(input -> {
                assertThat(input.name()).doesNotStartWith("input.").doesNotStartWith("category.");
                assertThat(input.origin()).doesNotStartWith("origin.");
            });
        });
        assertThat(lines(groups).count()).isEqualTo(everything().trace().size());
    }

    @Test
    void aBoreIsSaidWithItsUnitAndWhereItIsFrom() {
        TraceLine housing = line("Air believed over true air, by the bore", Units.METRIC);
        assertThat(housing.value()).isEqualTo("0.8174");
        assertThat(housing.inputs())
                .containsExactly(
                        new TraceLine.Entry(
                                "Inner bore of the tube in which the airflow sensor sits",
                                "sensorBoreMm",
                                "73 mm",
                                "the part on the car"),
                        new TraceLine.Entry(
                                "Inner bore of the tube in which the airflow sensor sits",
                                "sensorBoreMm",
                                "66 mm",
                                "the part for which the calibration was written"));
    }

    /** In inches alone, the constants of the formulas would be wrong. */
    @Test
    void theWorkingStaysInSiWithTheReadersFigureBeside() {
        TraceLine housing = line("Air believed over true air, by the bore", Units.IMPERIAL);
        assertThat(housing.inputs())
                .extracting(TraceLine.Entry::value)
                .containsExactly("73 mm (2.874 in)", "66 mm (2.598 in)");
        assertThat(line("Boost reached, absolute", Units.IMPERIAL).value()).isEqualTo("216 kPa (31.3 psi)");
    }

    /** The units stand in the names, and are those of the attributes. */
    @Test
    void theUnitInANameIsThatOfTheAttribute() {
        everything().trace().stream()
                .flatMap(step -> step.inputs().stream())
                .forEach(input -> Stream.concat(
                                Arrays.stream(Category.values()).map(PartAttributes::of), Stream.of(Assumptions.ALL))
                        .flatMap(set -> set.attributes().stream())
                        .filter(NumberAttribute.class::isInstance)
                        .map(NumberAttribute.class::cast)
                        .filter(attribute -> attribute.name().equals(input.name()))
                        .forEach(attribute ->
                                assertThat(input.unit()).as(input.name()).isEqualTo(attribute.unit())));
        assertThat(new Input("densityKgPerLitre_inst", 1, Input.Origin.COMPUTED).unit())
                .isEqualTo("kg/l");
        assertThat(new Input("lambdaAtTarget", 1, Input.Origin.COMPUTED).unit()).isEmpty();
    }

    private TraceLine line(String name, Units units) {
        return lines(traces.of(everything(), units))
                .filter(line -> line.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Stream<TraceLine> lines(List<TraceLine.Group> groups) {
        return groups.stream().flatMap(group -> group.lines().stream());
    }
}
