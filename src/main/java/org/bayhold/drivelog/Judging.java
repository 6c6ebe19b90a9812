package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.bayhold.drivelog.Finding.Effect;
import org.bayhold.drivelog.Judgement.Seconds;
import org.jspecify.annotations.Nullable;

/** From what was kept of a drive to the verdict. {@code docs/drive-log.md, D13 to D15}. */
final class Judging {
    /** One rule, one function: D13 in its order. */
    static final List<Function<Evidence, Stream<Finding>>> RULES = List.of(
            FuellingRules::trimAtLimit,
            FuellingRules::beyondNormalCorrection,
            FuellingRules::scaleError,
            FuellingRules::airLeak,
            FuellingRules::deliveryLimit,
            FuellingRules::bankDifference,
            FullLoadRules::lean,
            FullLoadRules::rich,
            FullLoadRules::overboost,
            FullLoadRules::underboost,
            FullLoadRules::knock,
            FullLoadRules::meterSaturated,
            FullLoadRules::duty,
            DataRules::badData,
            DataRules::coldOrOpenLoopOnly,
            DataRules::learnedBeforeFlash,
            FuellingRules::withinNormalCorrection);

    private Judging() {}

    static Judgement of(Drive drive, EngineFacts facts, Thresholds thresholds, Quality quality) {
        LoadAxis axis = drive.axis();
        List<TrimMap.Cell> cells = axis == null ? List.of() : drive.cells.all(axis);
        List<FlowPoints.Point> points = drive.points.points();
        Fit fit = Fitting.fit(points, drive.points.source(), facts.expected());
        Evidence evidence =
                new Evidence(facts, thresholds, quality, drive, cells, fit, Fitting.rise(points), drive.pulls.all());
        List<Finding> findings = RULES.stream()
                .flatMap(rule -> rule.apply(evidence))
                .sorted(Comparator.comparing(Finding::risk).reversed())
                .toList();
        List<Missing> missing = missing(evidence, findings);
        return new Judgement(
                verdict(findings, missing),
                missing,
                unjudged(evidence),
                findings,
                new Seconds(
                        quality.seconds(),
                        drive.warmSeconds(),
                        drive.closedSeconds(),
                        drive.idle.seconds,
                        drive.cruise.seconds,
                        drive.pulls.seconds()),
                new TrimMap(cells.isEmpty() ? null : axis, cells),
                fit,
                headroom(evidence),
                drive.pulls.all(),
                quality);
    }

    private static Verdict verdict(List<Finding> findings, List<Missing> missing) {
        if (findings.stream().anyMatch(finding -> finding.code().effect() == Effect.FAILS)) {
            return Verdict.FAIL;
        }
        return missing.isEmpty() ? Verdict.PASS : Verdict.INSUFFICIENT;
    }

    /** Authority less the largest correction of a cell that is long enough, in percent of the authority. */
    private static @Nullable Double headroom(Evidence evidence) {
        double authority = evidence.facts().trimAuthorityPercent();
        return evidence.judgedCells().stream()
                .findFirst()
                .map(cell -> Math.max(0, (authority - Math.abs(cell.worstPercent())) / authority * 100))
                .orElse(null);
    }

    private static List<Missing> missing(Evidence evidence, List<Finding> findings) {
        Quality quality = evidence.quality();
        Thresholds thresholds = evidence.thresholds();
        Drive drive = evidence.drive();
        List<Missing> missing = new ArrayList<>();
        need(missing, Missing.Code.ENGINE_SPEED, quality.has(Parameter.ENGINE_SPEED));
        need(missing, Missing.Code.LOAD, Stream.of(LoadAxis.values()).anyMatch(axis -> quality.has(axis.parameter())));
        boolean bank1 = quality.has(Parameter.SHORT_TRIM_1) && quality.has(Parameter.LONG_TRIM_1);
        boolean bank2 = quality.has(Parameter.SHORT_TRIM_2) && quality.has(Parameter.LONG_TRIM_2);
        need(missing, Missing.Code.TRIMS, bank1 || bank2);
        need(missing, Missing.Code.COOLANT_TEMPERATURE, quality.has(Parameter.COOLANT_TEMPERATURE));
        need(missing, Missing.Code.WARM_CLOSED_LOOP, drive.all.seconds > 0);
        need(missing, Missing.Code.IDLE, thresholds.idleSeconds(), drive.idle.seconds);
        need(missing, Missing.Code.CRUISE, thresholds.cruiseSeconds(), drive.cruise.seconds);
        need(
                missing,
                Missing.Code.PEDAL,
                thresholds.fullLoadSeconds() == 0
                        || quality.has(Parameter.ACCELERATOR)
                        || quality.has(Parameter.THROTTLE));
        need(missing, Missing.Code.FULL_LOAD, thresholds.fullLoadSeconds(), drive.pulls.seconds());
        if (thresholds.needsLambda()) {
            need(missing, Missing.Code.MEASURED_LAMBDA, quality.has(Parameter.MEASURED_LAMBDA));
            need(missing, Missing.Code.COMMANDED_RATIO, quality.has(Parameter.COMMANDED_RATIO));
        }
        need(
                missing,
                Missing.Code.MANIFOLD_PRESSURE,
                evidence.facts().boostTargetKpa() == null
                        || thresholds.fullLoadSeconds() == 0
                        || quality.has(Parameter.MANIFOLD_PRESSURE));
        boolean isBad = findings.stream().anyMatch(finding -> finding.code() == Finding.Code.BAD_DATA);
        need(missing, Missing.Code.SOUND_DATA, !isBad);
        return missing;
    }

    private static void need(List<Missing> missing, Missing.Code code, boolean isThere) {
        if (!isThere) {
            missing.add(Missing.of(code));
        }
    }

    private static void need(List<Missing> missing, Missing.Code code, double needed, double seen) {
        if (seen < needed) {
            missing.add(new Missing(code, needed, seen));
        }
    }

    private static Set<Unjudged> unjudged(Evidence evidence) {
        Quality quality = evidence.quality();
        Set<Unjudged> unjudged = EnumSet.noneOf(Unjudged.class);
        List<Pull> pulls = evidence.pulls();
        unless(unjudged, Unjudged.ERROR_OVER_FLOW, evidence.fit() != null);
        unless(unjudged, Unjudged.OTHER_BANK, evidence.drive().all.difference() != null);
        unless(
                unjudged,
                Unjudged.MIXTURE_AT_FULL_LOAD,
                pulls.stream().anyMatch(pull -> pull.lambdaErrorPercent() != null));
        boolean hasTarget = evidence.facts().boostTargetKpa() != null;
        unless(unjudged, Unjudged.BOOST, hasTarget && pulls.stream().anyMatch(pull -> pull.manifoldKpa() != null));
        unless(unjudged, Unjudged.KNOCK, pulls.stream().anyMatch(pull -> pull.knockDegrees() != null));
        unless(unjudged, Unjudged.INJECTOR_DUTY, pulls.stream().anyMatch(pull -> pull.dutyPercent() != null));
        unless(
                unjudged,
                Unjudged.AIRFLOW_SENSOR,
                quality.has(Parameter.AIRFLOW) && pulls.stream().anyMatch(pull -> pull.airflowGPerS() != null));
        return unjudged;
    }

    private static void unless(Set<Unjudged> unjudged, Unjudged what, boolean isJudged) {
        if (!isJudged) {
            unjudged.add(what);
        }
    }
}
