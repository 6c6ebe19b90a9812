package org.bayhold.drivelog;

import static org.bayhold.drivelog.Evidence.none;
import static org.bayhold.drivelog.Evidence.numbers;
import static org.bayhold.drivelog.Evidence.rowsOf;
import static org.bayhold.drivelog.Evidence.shown;

import java.util.List;
import java.util.stream.Stream;
import org.bayhold.drivelog.EngineFacts.ExpectedScale;
import org.bayhold.drivelog.Finding.Code;
import org.bayhold.prediction.Risk;
import org.bayhold.prediction.Sentence;
import org.jspecify.annotations.Nullable;

/** What the corrections of the closed loop show. {@code docs/drive-log.md, D13}. */
final class FuellingRules {
    /** A trim that rises must be so many standard errors from one that does not, and its halves must show it: the third is small. */
    private static final double SURE_RISE = 3;

    private static final double LEAST_LIMIT_SECONDS = 3;

    private FuellingRules() {}

    static Stream<Finding> trimAtLimit(Evidence evidence) {
        Drive drive = evidence.drive();
        double share = drive.closedSeconds() > 0 ? drive.limitSeconds() / drive.closedSeconds() * 100 : 0;
        if (drive.limitSeconds() < LEAST_LIMIT_SECONDS
                || share < evidence.thresholds().limitSharePercent()) {
            return none();
        }
        return Stream.of(new Finding(
                Code.TRIM_AT_LIMIT,
                Risk.HIGH,
                numbers(
                        "sharePercent", share,
                        "seconds", drive.limitSeconds(),
                        "authorityPercent", evidence.facts().trimAuthorityPercent()),
                List.of(drive.limitRows()),
                new Sentence(
                        "drivelog.finding.TRIM_AT_LIMIT",
                        List.of(
                                shown(share),
                                shown(evidence.facts().trimAuthorityPercent()),
                                shown(drive.limitSeconds(), 0)))));
    }

    static Stream<Finding> beyondNormalCorrection(Evidence evidence) {
        Thresholds thresholds = evidence.thresholds();
        double cruise = evidence.drive().cruise.worst();
        List<TrimMap.Cell> beyond = evidence.judgedCells().stream()
                .filter(cell -> Math.abs(cell.worstPercent()) > thresholds.cellTrimPercent())
                .toList();
        boolean isCruise = evidence.drive().cruise.seconds >= thresholds.cellSeconds()
                && Math.abs(cruise) > thresholds.cruiseTrimPercent();
        if (!isCruise && beyond.isEmpty()) {
            return none();
        }
        double worst = beyond.isEmpty() ? cruise : beyond.get(0).worstPercent();
        List<Rows> rows = beyond.isEmpty()
                ? List.of(new Rows(evidence.drive().cruise.firstRow, evidence.drive().cruise.lastRow))
                : rowsOf(beyond);
        return Stream.of(new Finding(
                Code.BEYOND_NORMAL_CORRECTION,
                evidence.ofTrim(worst),
                numbers("cruisePercent", cruise, "worstCellPercent", worst, "cells", (double) beyond.size()),
                rows,
                new Sentence(
                        "drivelog.finding.BEYOND_NORMAL_CORRECTION",
                        List.of(
                                shown(cruise),
                                shown(worst),
                                beyond.size(),
                                shown(thresholds.cruiseTrimPercent()),
                                shown(thresholds.cellTrimPercent())))));
    }

    static Stream<Finding> withinNormalCorrection(Evidence evidence) {
        boolean isEnough = evidence.drive().cruise.seconds
                        >= evidence.thresholds().cruiseSeconds()
                && evidence.drive().idle.seconds >= evidence.thresholds().idleSeconds();
        if (!isEnough || beyondNormalCorrection(evidence).findAny().isPresent()) {
            return none();
        }
        double cruise = evidence.drive().cruise.worst();
        double worst = evidence.judgedCells().stream()
                .findFirst()
                .map(TrimMap.Cell::worstPercent)
                .orElse(cruise);
        return Stream.of(new Finding(
                Code.WITHIN_NORMAL_CORRECTION,
                Risk.LOW,
                numbers("cruisePercent", cruise, "worstCellPercent", worst),
                List.of(new Rows(evidence.drive().all.firstRow, evidence.drive().all.lastRow)),
                new Sentence("drivelog.finding.WITHIN_NORMAL_CORRECTION", List.of(shown(cruise), shown(worst)))));
    }

    static Stream<Finding> scaleError(Evidence evidence) {
        Fit fit = evidence.fit();
        if (fit == null
                || !fit.isScaleSure()
                || Math.abs(fit.scalePercent()) <= evidence.thresholds().cruiseTrimPercent()) {
            return none();
        }
        ExpectedScale expected = evidence.facts().expected();
        return Stream.of(new Finding(
                Code.SCALE_ERROR,
                evidence.ofTrim(fit.scalePercent()),
                numbers(
                        "scalePercent", fit.scalePercent(),
                        "scaleStandardError", fit.scaleStandardError(),
                        "expectedPercent", expected == null ? Double.NaN : expected.percent()),
                List.of(new Rows(evidence.drive().all.firstRow, evidence.drive().all.lastRow)),
                words(fit, expected)));
    }

    private static Sentence words(Fit fit, @Nullable ExpectedScale expected) {
        double scale = shown(fit.scalePercent());
        double error = shown(fit.scaleStandardError(), 2);
        if (expected == null || fit.agreement() == null) {
            return new Sentence("drivelog.finding.SCALE_ERROR", List.of(scale, error));
        }
        double percent = shown(expected.percent());
        return switch (fit.agreement()) {
            case CONFIRMS -> new Sentence("drivelog.finding.SCALE_ERROR.confirmed", List.of(scale, error, percent));
            case WITHIN_BAND ->
                new Sentence(
                        "drivelog.finding.SCALE_ERROR.within-band",
                        List.of(scale, error, percent, shown(expected.lowPercent()), shown(expected.highPercent())));
            case DIFFERS -> new Sentence("drivelog.finding.SCALE_ERROR.differs", List.of(scale, error, percent));
        };
    }

    /** More air than is metered: it fades as the flow grows. */
    static Stream<Finding> airLeak(Evidence evidence) {
        Fit fit = evidence.fit();
        double idleFlow = evidence.drive().idleFlow();
        double atIdle = fit == null ? Double.NaN : fit.offsetGPerS() / idleFlow * 100;
        if (fit == null
                || !fit.isOffsetSure()
                || !(atIdle > evidence.thresholds().leakPercent())) {
            return none();
        }
        return Stream.of(new Finding(
                Code.AIR_LEAK_PATTERN,
                evidence.ofTrim(atIdle),
                numbers(
                        "offsetGPerS",
                        fit.offsetGPerS(),
                        "offsetStandardError",
                        fit.offsetStandardError(),
                        "atIdlePercent",
                        atIdle,
                        "idleFlowGPerS",
                        idleFlow),
                List.of(new Rows(evidence.drive().idle.firstRow, evidence.drive().idle.lastRow)),
                new Sentence(
                        "drivelog.finding.AIR_LEAK_PATTERN",
                        List.of(
                                shown(fit.offsetGPerS(), 2),
                                shown(fit.offsetStandardError(), 2),
                                shown(atIdle),
                                shown(idleFlow)))));
    }

    static Stream<Finding> deliveryLimit(Evidence evidence) {
        Fitting.Rise rise = evidence.rise();
        if (rise == null
                || rise.percent() <= evidence.thresholds().deliveryPercent()
                || !(rise.percent() > SURE_RISE * rise.standardError())
                || !(rise.stepPercent() > evidence.thresholds().deliveryPercent() / 2)) {
            return none();
        }
        return Stream.of(new Finding(
                Code.DELIVERY_LIMIT,
                Risk.HIGH,
                numbers(
                        "risePercent", rise.percent(),
                        "riseStandardError", rise.standardError(),
                        "fromGPerS", rise.fromFlow(),
                        "toGPerS", rise.toFlow()),
                List.of(new Rows(rise.firstRow(), rise.lastRow())),
                new Sentence(
                        "drivelog.finding.DELIVERY_LIMIT",
                        List.of(shown(rise.percent()), shown(rise.fromFlow()), shown(rise.toFlow())))));
    }

    static Stream<Finding> bankDifference(Evidence evidence) {
        Drive.Share all = evidence.drive().all;
        Double difference = all.difference();
        if (difference == null
                || all.seconds < evidence.thresholds().cellSeconds()
                || Math.abs(difference) <= evidence.thresholds().bankPercent()) {
            return none();
        }
        return Stream.of(new Finding(
                Code.BANK_DIFFERENCE,
                Risk.MODERATE,
                numbers("differencePercent", difference, "bank1Percent", all.bank1(), "bank2Percent", all.bank2()),
                List.of(new Rows(all.firstRow, all.lastRow)),
                new Sentence(
                        "drivelog.finding.BANK_DIFFERENCE",
                        List.of(
                                shown(Math.abs(difference)),
                                shown(Evidence.or(all.bank1())),
                                shown(Evidence.or(all.bank2()))))));
    }
}
