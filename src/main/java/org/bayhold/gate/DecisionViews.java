package org.bayhold.gate;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.FlashedView;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.PartSpec;
import org.bayhold.page.Units;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Decisions in words. */
@Component
class DecisionViews {
    private final Catalog catalog;
    private final MessageSource messages;
    private final PredictionWords predictions;

    DecisionViews(Catalog catalog, MessageSource messages, PredictionWords predictions) {
        this.catalog = catalog;
        this.messages = messages;
        this.predictions = predictions;
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
                checks(decision.checks()),
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

    List<DecisionView.CheckView> checks(List<CheckResult> checks) {
        return checks.stream()
                .map(check -> new DecisionView.CheckView(
                        check.code(),
                        check.outcome(),
                        sentence("gate.reason." + check.reason().name()),
                        check.reason(),
                        check.records()))
                .toList();
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
