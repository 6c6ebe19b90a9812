package org.bayhold.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.bayhold.catalog.Category;
import org.bayhold.gate.Comparisons.Comparison;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * What a person has to be told with an answer. The signal words are those of ANSI Z535.6 and ISO 3864-2 as they are defined:
 * WARNING where somebody could be killed or badly hurt, NOTICE for an engine alone. Pure.
 */
final class Cautions {
    private static final Set<Category> FUEL_UNDER_PRESSURE = EnumSet.of(
            Category.INJECTORS,
            Category.FUEL_PUMP,
            Category.HIGH_PRESSURE_FUEL_PUMP,
            Category.FUEL_PRESSURE_REGULATOR,
            Category.AUXILIARY_INJECTION);
    private static final Set<Category> UNDER_EMISSIONS_LAW = EnumSet.of(
            Category.DOWNPIPE,
            Category.EXHAUST_MANIFOLD,
            Category.EMISSIONS_EQUIPMENT,
            Category.CRANKCASE_VENTILATION,
            Category.OXYGEN_SENSOR,
            Category.AIR_INTAKE,
            Category.ECU);

    private Cautions() {}

    /** Each a sentence of the bundle that begins with its signal word, the gravest first. */
    static List<Why> of(Hypothesis car, Answer answer, Comparison comparison) {
        List<Why> cautions = new ArrayList<>();
        if (answer != Answer.COVERED) {
            cautions.add(Why.of("advice.caution." + grade(answer, riskOf(comparison))));
        }
        if (touches(car, FUEL_UNDER_PRESSURE)) {
            cautions.add(Why.of("advice.caution.fuel"));
        }
        if (answer == Answer.COVERED) {
            cautions.add(Why.of("advice.caution.covered"));
        }
        if (touches(car, UNDER_EMISSIONS_LAW)) {
            cautions.add(Why.of("advice.caution.emissions"));
        }
        cautions.add(Why.of("advice.caution.estimate"));
        return cautions;
    }

    static @Nullable Risk riskOf(Comparison comparison) {
        return comparison.prediction().map(prediction -> prediction.risk()).orElse(null);
    }

    private static String grade(Answer answer, @Nullable Risk risk) {
        if (risk == Risk.EXTREME) {
            return "extreme";
        }
        return risk == Risk.HIGH || answer == Answer.UNKNOWN_PARTS || risk == null ? "high" : "engine";
    }

    private static boolean touches(Hypothesis car, Set<Category> categories) {
        return car.proposals().stream()
                .anyMatch(proposal -> categories.contains(proposal.place().category()));
    }
}
