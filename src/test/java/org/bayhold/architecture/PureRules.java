package org.bayhold.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** What decides is Java alone, and so is everything that it stands on: it runs without a server, in any test. */
final class PureRules {
    static final Map<String, List<String>> CORES = Map.of(
            "buildsheet",
            List.of("Fold", "FoldingCar", "CarWalk", "LiveFacts", "OpenItems", "Coverage", "CarState", "Fact"),
            "gate",
            List.of(
                    "Checks",
                    "ReadBackCheck",
                    "TroubleCodeCheck",
                    "Gate",
                    "Replay",
                    "Evidence",
                    "Causes",
                    "Risks",
                    "Policies",
                    "Question",
                    "Decision",
                    "LambdaPicture",
                    "ContributionPicture",
                    "DutyPicture"),
            "drives",
            List.of(
                    "TrimMapPicture",
                    "MapSide",
                    "ErrorPicture",
                    "Thinned",
                    "PullPictures",
                    "PullPicture",
                    "PullScales",
                    "LogPictures"),
            "audit",
            List.of("Judging", "Stretch", "Judged"),
            "vehicle",
            List.of("Vin", "CheckCharacter"),
            "catalog",
            List.of("EffectGroups", "Category", "PartAttributes", "AttributeSet", "Curve"),
            "page",
            List.of("Units", "Axis", "Plot"));
    private static final Set<String> PURE_THROUGHOUT = Set.of("obd", "prediction", "drivelog");
    /** The gate logs a check that could not run. */
    private static final String MAY_LOG = "Gate";
    /** A file is read as CSV by a library that is as pure. */
    private static final String READS_CSV = "drivelog";

    static final ArchRule CORES_ARE_PURE = classes()
            .that(DescribedPredicate.describe("are pure cores", PureRules::isCore))
            .should(Broken.by("framework under them", PureRules::impurities));

    private PureRules() {}

    private static boolean isCore(JavaClass type) {
        String name = type.getPackageName();
        String module = name.substring(name.lastIndexOf('.') + 1);
        if (type.getSimpleName().equals("package-info")) {
            return false; // it says what the module may use, and is never loaded
        }
        return PURE_THROUGHOUT.contains(module)
                || CORES.getOrDefault(module, List.of()).contains(Broken.outermost(type));
    }

    private static Stream<String> impurities(JavaClass core) {
        Set<String> seen = new HashSet<>(Set.of(core.getName()));
        Deque<JavaClass> open = new ArrayDeque<>(List.of(core));
        Stream.Builder<String> found = Stream.builder();
        while (!open.isEmpty()) {
            JavaClass type = open.pop();
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                JavaClass target = dependency.getTargetClass().getBaseComponentType();
                if (isOurs(target)) {
                    if (seen.add(target.getName())) {
                        open.push(target);
                    }
                } else if (!isPure(type, target)) {
                    found.add(core.getName() + " rests on " + target.getName() + ": " + dependency.getDescription());
                }
            }
        }
        return found.build();
    }

    private static boolean isOurs(JavaClass type) {
        return type.getPackageName().startsWith("org.bayhold.")
                || type.getPackageName().startsWith("fixtures.");
    }

    private static boolean isPure(JavaClass from, JavaClass target) {
        String name = target.getPackageName();
        return target.isPrimitive()
                || (name + ".").startsWith("java.")
                || name.equals("org.jspecify.annotations")
                || (name.equals("de.siegmar.fastcsv.reader")
                        && from.getPackageName().endsWith("." + READS_CSV))
                || (name.equals("org.slf4j") && Broken.outermost(from).equals(MAY_LOG));
    }
}
