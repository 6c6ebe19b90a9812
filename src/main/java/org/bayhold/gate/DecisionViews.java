package org.bayhold.gate;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.FlashedView;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.PartSpec;
import org.bayhold.drives.LogWords;
import org.bayhold.page.Units;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Decisions in words. */
@Component
class DecisionViews {
    private final Catalog catalog;
    private final MessageSource messages;
    private final PredictionWords predictions;
    private final LogWords logWords;

    DecisionViews(Catalog catalog, MessageSource messages, PredictionWords predictions, LogWords logWords) {
        this.catalog = catalog;
        this.messages = messages;
        this.predictions = predictions;
        this.logWords = logWords;
    }

    /** As answered by the API and as stored: in SI. */
    DecisionView view(Decision decision) {
        return view(decision, Units.METRIC);
    }

    /** As a page shows it. */
    DecisionView view(Decision decision, Units units) {
        return new DecisionView(
                decision.car().registration().vehicleId(),
                decision.knownAt(),
                decision.effectiveAt(),
                decision.rules(),
                decision.verdict(),
                decision.risk(),
                checks(decision.checks(), decision.car().driveLogs()),
                mismatches(decision.mismatches()),
                Optional.ofNullable(decision.prediction())
                        .map(known -> predictions.view(known, units))
                        .orElse(null),
                FlashedView.of(decision.car().inEcu()));
    }

    List<DecisionView.Mismatch> mismatches(List<Gap> gaps) {
        Map<UUID, PartSpec> specs = catalog.specs(gaps.stream()
                .flatMap(gap -> Stream.concat(
                        Stream.ofNullable(gap.fitted().partSpecId()),
                        gap.calibratedFor().stream().flatMap(line -> line.partSpecIds().stream())))
                .toList());
        return gaps.stream().map(gap -> mismatch(gap, specs)).toList();
    }

    /** @param logs the drives that checks may rest on: one that showed too little says what is still to be driven */
    List<DecisionView.CheckView> checks(List<CheckResult> checks, List<DriveLogged> logs) {
        return checks.stream()
                .map(check -> new DecisionView.CheckView(
                        check.code(), check.outcome(), reason(check, logs), check.reason(), check.records()))
                .toList();
    }

    private String reason(CheckResult check, List<DriveLogged> logs) {
        Stream<String> missing = check.reason() != Reason.DRIVE_LOG_INSUFFICIENT
                ? Stream.empty()
                : logs.stream()
                        .filter(log -> check.records().contains(log.stamp().id()))
                        .flatMap(log -> log.missing().stream())
                        .map(need -> logWords.sentence(need.sentence()));
        return Stream.concat(Stream.of(sentence("gate.reason." + check.reason().name())), missing)
                .collect(Collectors.joining(" "));
    }

    private DecisionView.Mismatch mismatch(Gap gap, Map<UUID, PartSpec> specs) {
        Optional<CoverageLine> line = gap.calibratedFor();
        return new DecisionView.Mismatch(
                gap.place().category(),
                gap.place().position(),
                gap.group(),
                part(gap.fitted(), specs),
                new DecisionView.CalibratedFor(
                        line.map(CoverageLine::factoryAllowed).orElse(true),
                        line.map(CoverageLine::noneAllowed).orElse(false),
                        line.map(CoverageLine::partSpecIds).orElse(List.of()).stream()
                                .map(id -> part(Fitted.part(id), specs))
                                .toList()),
                sentence("gate.why." + gap.why().name()));
    }

    private static DecisionView.PartView part(Fitted fitted, Map<UUID, PartSpec> specs) {
        PartSpec spec = specs.get(fitted.partSpecId());
        return new DecisionView.PartView(
                fitted.state(),
                fitted.partSpecId(),
                spec == null ? null : spec.maker(),
                spec == null ? null : spec.partNumber(),
                spec == null ? null : spec.specRevision());
    }

    String sentence(String key) {
        return messages.getMessage(key, null, Locale.ENGLISH);
    }
}
