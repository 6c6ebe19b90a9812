package org.bayhold.gate;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.page.Units;
import org.bayhold.prediction.Input;
import org.bayhold.prediction.Prediction;
import org.bayhold.prediction.Step;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * The steps of a prediction in words. Figures stay in the units of the formulas, or nobody could work them out again; who
 * reads others has them beside.
 */
@Component
class Traces {
    private static final int RATIO_DECIMALS = 4;
    private static final int DECIMALS = 2;
    private static final int AS_RECORDED = Integer.MAX_VALUE;

    private final MessageSource messages;

    Traces(MessageSource messages) {
        this.messages = messages;
    }

    /** The car as a whole first, then each part; within them in the order in which they were worked out. */
    List<TraceLine.Group> of(Prediction prediction, Units units) {
        Set<Optional<Place>> places = new LinkedHashSet<>(Set.of(Optional.empty()));
        prediction.trace().forEach(step -> places.add(Optional.ofNullable(step.place())));
        return places.stream()
                .map(place -> new TraceLine.Group(
                        place.map(this::place).orElse(null),
                        prediction.trace().stream()
                                .filter(step ->
                                        Optional.ofNullable(step.place()).equals(place))
                                .map(step -> line(step, units))
                                .toList()))
                .filter(group -> !group.lines().isEmpty())
                .toList();
    }

    private TraceLine line(Step step, Units units) {
        return new TraceLine(
                message("formula." + step.formula().name()),
                shown(step.value(), step.formula().unit(), false, units),
                message("how." + step.formula().name()),
                step.formula().text(),
                step.inputs().stream().map(input -> entry(input, units)).toList(),
                step.formula().rule(),
                step.formula().source());
    }

    private TraceLine.Entry entry(Input input, Units units) {
        boolean recorded = input.origin() != Input.Origin.COMPUTED;
        return new TraceLine.Entry(
                name(input.name()),
                input.name(),
                shown(input.value(), input.unit(), recorded, units),
                message("origin." + input.origin().name()));
    }

    private String name(String code) {
        boolean category =
                Arrays.stream(Category.values()).anyMatch(known -> known.name().equals(code));
        String attribute = message("attribute." + code, "");
        return category
                ? message("category." + code)
                : attribute.isEmpty() ? message("input." + code.replaceFirst("_(inst|cal)$", "")) : attribute;
    }

    private static String shown(double value, String unit, boolean recorded, Units units) {
        int decimals = recorded ? AS_RECORDED : unit.isEmpty() || unit.equals("kg/l") ? RATIO_DECIMALS : DECIMALS;
        String si = Units.METRIC.show(value, unit, decimals);
        return units.changes(unit) ? si + " (" + units.show(value, unit) + ")" : si;
    }

    String place(Place place) {
        String category = message("category." + place.category().name());
        return place.position() == null ? category : category + ", " + place.position();
    }

    private String message(String key) {
        return message(key, key);
    }

    private String message(String key, String otherwise) {
        return Objects.requireNonNull(messages.getMessage(key, null, otherwise, Locale.ENGLISH));
    }
}
