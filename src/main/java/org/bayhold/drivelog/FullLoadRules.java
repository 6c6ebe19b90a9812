package org.bayhold.drivelog;

import static org.bayhold.drivelog.Evidence.none;
import static org.bayhold.drivelog.Evidence.numbers;
import static org.bayhold.drivelog.Evidence.or;
import static org.bayhold.drivelog.Evidence.rows;
import static org.bayhold.drivelog.Evidence.shown;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.bayhold.drivelog.Finding.Code;
import org.bayhold.prediction.Risk;
import org.bayhold.prediction.Sentence;

/** What the accelerations at full load show. {@code docs/drive-log.md, D13}. */
final class FullLoadRules {
    /** As {@code docs/prediction.md, P17}. */
    private static final double EXTREME_LEAN_PERCENT = 10;

    private static final double EXTREME_BOOST_PERCENT = 10;
    private static final double IMPOSSIBLE_DUTY_PERCENT = 100;
    private static final double HIGH_RICH_PERCENT = 10;

    /** Below this a charger need not have come to its pressure; common practice. */
    private static final double CHARGED_RPM = 3_000;

    private static final double CEILING_SHARE = 0.99;
    private static final double FLAT_RPM = 400;

    private FullLoadRules() {}

    static Stream<Finding> lean(Evidence evidence) {
        double limit = evidence.thresholds().lambdaPercent();
        List<Pull> lean = evidence.beyond(pull -> or(pull.leanestPercent()), limit);
        if (lean.isEmpty()) {
            return none();
        }
        double worst = or(lean.get(0).leanestPercent());
        return Stream.of(new Finding(
                Code.LEAN_AT_FULL_LOAD,
                worst >= EXTREME_LEAN_PERCENT ? Risk.EXTREME : Risk.HIGH,
                numbers("leanestPercent", worst, "pulls", (double) lean.size()),
                rows(lean),
                new Sentence("drivelog.finding.LEAN_AT_FULL_LOAD", List.of(shown(worst), lean.size(), shown(limit)))));
    }

    static Stream<Finding> rich(Evidence evidence) {
        double limit = evidence.thresholds().lambdaPercent();
        List<Pull> rich = evidence.beyond(pull -> -or(pull.richestPercent()), limit);
        if (rich.isEmpty()) {
            return none();
        }
        double worst = -or(rich.get(0).richestPercent());
        return Stream.of(new Finding(
                Code.RICH_AT_FULL_LOAD,
                worst >= HIGH_RICH_PERCENT ? Risk.HIGH : Risk.MODERATE,
                numbers("richestPercent", worst, "pulls", (double) rich.size()),
                rows(rich),
                new Sentence("drivelog.finding.RICH_AT_FULL_LOAD", List.of(shown(worst), rich.size(), shown(limit)))));
    }

    static Stream<Finding> overboost(Evidence evidence) {
        Double target = evidence.facts().boostTargetKpa();
        if (target == null) {
            return none();
        }
        double limit = evidence.thresholds().boostPercent();
        List<Pull> over = evidence.beyond(pull -> excess(pull, target), limit);
        if (over.isEmpty()) {
            return none();
        }
        double worst = excess(over.get(0), target);
        return Stream.of(new Finding(
                Code.OVERBOOST,
                worst > EXTREME_BOOST_PERCENT ? Risk.EXTREME : Risk.HIGH,
                numbers("excessPercent", worst, "reachedKpa", over.get(0).manifoldKpa(), "targetKpa", target),
                rows(over),
                new Sentence(
                        "drivelog.finding.OVERBOOST",
                        List.of(shown(or(over.get(0).manifoldKpa()), 0), shown(worst), shown(target, 0)))));
    }

    /** Of the pull that came nearest: one that reaches the target shows that it can be reached. */
    static Stream<Finding> underboost(Evidence evidence) {
        Double target = evidence.facts().boostTargetKpa();
        Pull best = evidence.pulls().stream()
                .filter(pull -> pull.manifoldKpa() != null && pull.rpmTo() >= CHARGED_RPM)
                .max(Comparator.comparingDouble(pull -> or(pull.manifoldKpa())))
                .orElse(null);
        if (target == null || best == null) {
            return none();
        }
        double lack = -excess(best, target);
        if (lack <= evidence.thresholds().boostPercent()) {
            return none();
        }
        return Stream.of(new Finding(
                Code.UNDERBOOST,
                Risk.MODERATE,
                numbers("lackPercent", lack, "reachedKpa", best.manifoldKpa(), "targetKpa", target),
                rows(List.of(best)),
                new Sentence(
                        "drivelog.finding.UNDERBOOST",
                        List.of(shown(or(best.manifoldKpa()), 0), shown(lack), shown(target, 0)))));
    }

    private static double excess(Pull pull, double target) {
        return (or(pull.manifoldKpa()) / target - 1) * 100;
    }

    static Stream<Finding> knock(Evidence evidence) {
        double limit = evidence.thresholds().knockDegrees();
        List<Pull> knocking = evidence.beyond(pull -> or(pull.knockDegrees()), limit);
        if (knocking.isEmpty()) {
            return none();
        }
        double worst = or(knocking.get(0).knockDegrees());
        return Stream.of(new Finding(
                Code.KNOCK_RETARD,
                worst > 2 * limit ? Risk.EXTREME : Risk.HIGH,
                numbers("retardDegrees", worst, "pulls", (double) knocking.size()),
                rows(knocking),
                new Sentence("drivelog.finding.KNOCK_RETARD", List.of(shown(worst), knocking.size(), shown(limit)))));
    }

    static Stream<Finding> meterSaturated(Evidence evidence) {
        Double ceiling = evidence.facts().airflowCeilingGPerS();
        List<Pull> saturated = evidence.pulls().stream()
                .filter(pull -> or(pull.flatAirflowRpm()) >= FLAT_RPM
                        || (ceiling != null && or(pull.airflowGPerS()) >= ceiling * CEILING_SHARE))
                .sorted(Comparator.comparingDouble(pull -> -or(pull.airflowGPerS())))
                .toList();
        if (saturated.isEmpty()) {
            return none();
        }
        double flow = or(saturated.get(0).airflowGPerS());
        return Stream.of(new Finding(
                Code.METER_SATURATED,
                Risk.HIGH,
                numbers(
                        "airflowGPerS", flow,
                        "ceilingGPerS", ceiling,
                        "flatOverRpm", saturated.get(0).flatAirflowRpm()),
                rows(saturated),
                new Sentence("drivelog.finding.METER_SATURATED", List.of(shown(flow)))));
    }

    static Stream<Finding> duty(Evidence evidence) {
        double limit = evidence.thresholds().dutyPercent();
        List<Pull> open = evidence.beyond(pull -> or(pull.dutyPercent()), limit);
        if (open.isEmpty()) {
            return none();
        }
        double worst = or(open.get(0).dutyPercent());
        return Stream.of(new Finding(
                Code.DELIVERY_LIMIT,
                worst > IMPOSSIBLE_DUTY_PERCENT ? Risk.EXTREME : Risk.HIGH,
                numbers("dutyPercent", worst, "pulls", (double) open.size()),
                rows(open),
                new Sentence("drivelog.finding.DELIVERY_LIMIT.duty", List.of(shown(worst), shown(limit)))));
    }
}
