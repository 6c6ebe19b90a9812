package org.bayhold.gate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.buildsheet.BuildLine;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.InEcu;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.bayhold.prediction.Prediction;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** The build sheet beside the calibration that is in the car, differences first. */
@Component
class Beside {
    private final Catalog catalog;
    private final MessageSource messages;

    Beside(Catalog catalog, MessageSource messages) {
        this.catalog = catalog;
        this.messages = messages;
    }

    List<BesideLine> of(Decision decision) {
        CarState car = decision.car();
        Optional<Revision> revision = car.revision();
        Map<Place, Gap> gaps = decision.mismatches().stream().collect(Collectors.toMap(Gap::place, gap -> gap));
        Map<Place, BuildLine> fitted = car.lines().stream().collect(Collectors.toMap(BuildLine::place, line -> line));
        TreeSet<Place> places = new TreeSet<>(fitted.keySet());
        revision.ifPresent(r -> r.coverage().forEach(line -> places.add(line.place())));
        Map<UUID, PartSpec> specs = catalog.specs(Stream.concat(
                        car.lines().stream()
                                .flatMap(line -> Stream.ofNullable(line.fitted().partSpecId())),
                        revision.stream()
                                .flatMap(r -> r.coverage().stream())
                                .flatMap(line -> line.partSpecIds().stream()))
                .toList());
        Map<Place, String> figures = figures(decision.prediction());
        List<BesideLine> lines = new ArrayList<>();
        for (Place place : places) {
            BuildLine line = fitted.get(place);
            Fitted on = car.fittedAt(place);
            Gap gap = gaps.get(place);
            boolean unnamed = revision.flatMap(r -> r.coverageAt(place)).isEmpty();
            lines.add(new BesideLine(
                    label(place),
                    name(on, specs),
                    calibratedFor(car, place, specs),
                    gap == null ? null : why(car, on, gap),
                    figures.get(place),
                    line == null ? null : line.since(),
                    gap == null && unnamed && on.state() == Fitted.State.FACTORY,
                    gap != null
                            && unnamed
                            && on.state() == Fitted.State.UNKNOWN
                            && (line == null || line.since() == null)));
        }
        lines.sort(Comparator.comparing((BesideLine line) -> !line.differs()).thenComparing(BesideLine::usual));
        return lines;
    }

    /** What each part alone does to lambda, as far as it can be computed. */
    private Map<Place, String> figures(@Nullable Prediction prediction) {
        Map<Place, String> figures = new HashMap<>();
        if (prediction != null) {
            prediction
                    .alone()
                    .forEach(alone -> figures.put(
                            alone.place(),
                            message(
                                    "beside.figure",
                                    String.format(
                                            Locale.ENGLISH,
                                            "%.3f",
                                            alone.mixture().lambda()))));
        }
        return figures;
    }

    /** Where nobody knows the calibration, nobody can say how the part differs from it. */
    private String why(CarState car, Fitted on, Gap gap) {
        boolean unknown = car.revision().isEmpty() && !(car.inEcu() instanceof InEcu.Factory);
        return unknown && on.state() != Fitted.State.UNKNOWN
                ? message("beside.cannot-tell")
                : message("gate.why." + gap.why().name());
    }

    private String calibratedFor(CarState car, Place place, Map<UUID, PartSpec> specs) {
        if (car.inEcu() instanceof InEcu.Factory) {
            return message("fitted.FACTORY");
        }
        if (car.revision().isEmpty()) {
            return message("beside.unknown");
        }
        Optional<CoverageLine> line = car.revision().get().coverageAt(place);
        if (line.isEmpty()) {
            return message("fitted.FACTORY");
        }
        List<String> names = new ArrayList<>();
        line.get().partSpecIds().forEach(id -> names.add(name(Fitted.part(id), specs)));
        if (line.get().factoryAllowed()) {
            names.add(message("fitted.FACTORY"));
        }
        if (line.get().noneAllowed()) {
            names.add(message("fitted.NONE"));
        }
        return String.join(" " + message("beside.or") + " ", names);
    }

    private String name(Fitted fitted, Map<UUID, PartSpec> specs) {
        PartSpec spec = specs.get(fitted.partSpecId());
        return spec == null ? message("fitted." + fitted.state().name()) : spec.name();
    }

    private String label(Place place) {
        String category = message("category." + place.category().name());
        return place.position() == null ? category : category + ", " + place.position();
    }

    private String message(String key, Object... arguments) {
        return Objects.requireNonNull(messages.getMessage(key, arguments, key, Locale.ENGLISH));
    }
}
