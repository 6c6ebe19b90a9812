package org.bayhold.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.util.Date;
import java.util.stream.Stream;

/** Time is an argument: the one clock is made at the edge and handed in. */
final class TimeRules {
    static final String EDGE = "WebSetup";

    static final ArchRule TIME_IS_AN_ARGUMENT = classes()
            .that(DescribedPredicate.describe(
                    "are not where the clock is made",
                    type -> !Broken.outermost(type).equals(EDGE)))
            .should(Broken.by("clock of their own", TimeRules::clocks))
            .because("a test sets the clock, and a decision is replayed at any time");

    private TimeRules() {}

    private static Stream<String> clocks(JavaClass type) {
        return type.getAccessesFromSelf().stream()
                .filter(TimeRules::readsAClockOfItsOwn)
                .map(JavaAccess::getDescription);
    }

    private static boolean readsAClockOfItsOwn(JavaAccess<?> access) {
        if (!(access.getTarget() instanceof CodeUnitAccessTarget target)) {
            return false;
        }
        String owner = target.getOwner().getName();
        boolean handedOne = target.getRawParameterTypes().stream().anyMatch(type -> type.isEquivalentTo(Clock.class));
        boolean hasArguments = !target.getRawParameterTypes().isEmpty();
        return switch (target.getName()) {
            case "now" -> owner.startsWith("java.time.") && !handedOne;
            case "currentTimeMillis" -> owner.equals(System.class.getName());
            case "<init>" -> owner.equals(Date.class.getName()) && !hasArguments;
            default -> owner.equals(Clock.class.getName()) && target.getName().startsWith("system");
        };
    }
}
