package org.bayhold.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.prediction.Chain.Links;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.prediction.Prediction.Boost;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Prediction.Ratios;
import org.bayhold.prediction.Share.Link;
import org.jspecify.annotations.Nullable;

/** What the mismatches of a car do. {@code docs/prediction.md}, in its order. */
public final class Predictions {
    private final Workings workings;
    private final AirMeter air;
    private final FuelDelivery fuel;
    private final List<Seat> differing;
    private @Nullable Boost boost;

    private Predictions(Workings workings) {
        this.workings = workings;
        air = new AirMeter(workings);
        fuel = new FuelDelivery(workings);
        differing = workings.build.differing();
    }

    /** Empty where nothing differs. The same build gives the same prediction, whenever and wherever it is asked. */
    public static Optional<Prediction> of(Build build) {
        Predictions predictions = new Predictions(new Workings(build));
        return predictions.differing.isEmpty() ? Optional.empty() : Optional.of(predictions.predict());
    }

    /** The mixture at load where this is the airflow; null where no ratio is known. */
    static @Nullable Mixture mixtureAt(Build build, double flowGPerS) {
        Workings workings = Workings.at(build, flowGPerS);
        return Chain.atLoad(new Predictions(workings).links(), workings);
    }

    private Links links() {
        differing.forEach(workings.assumes.isCompressionIgnition() ? this::leave : this::work);
        return new Links(air.ratio(), fuel.ratio(), fuel.stoichiometric());
    }

    private Prediction predict() {
        Links links = links();
        boolean spark = !workings.assumes.isCompressionIgnition();
        Ratios ratios = ratios(links);
        Mixture mixture = Chain.atLoad(links, workings);
        Mixture atIdle = Chain.atIdle(links, workings);
        List<Alone> alone = Chain.alone(differing, workings);
        Double duty = spark ? Duty.of(workings) : null;
        List<Mixture> mixtures = Grading.mixtures(mixture, atIdle, alone);
        Risk risk = Grading.of(differing, workings.notComputable(), mixtures, boost, duty);
        Words words = new Words(workings, differing);
        return new Prediction(
                ratios,
                mixture,
                atIdle,
                boost,
                duty,
                workings.assumes.trimAuthority().value(),
                workings.notComputable(),
                risk,
                words.of(mixture, boost, duty, alone, risk),
                alone,
                workings.steps());
    }

    private void work(Seat seat) {
        if (workings.isBlank(seat)) {
            return;
        }
        switch (seat.category()) {
            case AIR_INTAKE, AIRFLOW_SENSOR -> air.work(seat);
            case INJECTORS, FUEL_PRESSURE_REGULATOR, FUEL -> fuel.work(seat);
            case PRESSURE_SENSOR -> workPressure(seat);
            default -> leaveWithoutFormula(seat);
        }
    }

    private void workPressure(Seat sensor) {
        Optional<Boost> read = PressureReading.of(sensor, workings);
        read.ifPresent(this::keepWorse);
        if (workings.assumes.isSpeedDensity()) {
            read.map(Boost::readingRatio)
                    .ifPresent(ratio -> workings.share(sensor, Link.AIR_METER, Factor.everywhere(ratio)));
        }
    }

    /** Of several sensors, the one that reads the farthest from the truth. */
    private void keepWorse(Boost read) {
        boost = boost == null || excess(read) > excess(boost) ? read : boost;
    }

    private static double excess(Boost read) {
        return read.excessPercent() == null ? Double.NEGATIVE_INFINITY : read.excessPercent();
    }

    private void leaveWithoutFormula(Seat seat) {
        if (seat.group() != EffectGroup.DRIVELINE) {
            workings.cannot(seat.place(), new Sentence("prediction.why.no-formula", List.of()));
        }
    }

    private void leave(Seat seat) {
        workings.cannot(seat.place(), new Sentence("prediction.why.compression-ignition", List.of()));
    }

    private Ratios ratios(Links links) {
        links.airMeter().ifPresent(known -> {
            product(Formula.AIR_METER_RATIO, Link.AIR_METER, known.atLoad(), Factor::atLoad);
            productAtIdle(Formula.AIR_METER_RATIO_AT_IDLE, Link.AIR_METER, known);
        });
        links.fuelDelivery().ifPresent(known -> {
            product(Formula.FUEL_DELIVERY_RATIO, Link.FUEL_DELIVERY, known.atLoad(), Factor::atLoad);
            productAtIdle(Formula.FUEL_DELIVERY_RATIO_AT_IDLE, Link.FUEL_DELIVERY, known);
        });
        return new Ratios(
                links.airMeter().map(Factor::atLoad).orElse(null),
                links.airMeter().map(Factor::bandPercent).orElse(null),
                links.fuelDelivery().map(Factor::atLoad).orElse(null),
                links.fuelDelivery().map(Factor::atIdle).orElse(null),
                links.stoichiometric().map(Factor::atLoad).orElse(null));
    }

    /** Where it is the same as at load, once is enough. */
    private void productAtIdle(Formula formula, Link link, Factor product) {
        Double atIdle = product.atIdle();
        if (atIdle != null && atIdle != product.atLoad()) {
            product(formula, link, atIdle, Factor::atIdle);
        }
    }

    private void product(Formula formula, Link link, double product, Function<Factor, @Nullable Double> of) {
        List<Input> parts = new ArrayList<>();
        workings.shares().stream()
                .filter(share -> share.link() == link)
                .map(share -> share.place().category())
                .distinct()
                .forEach(category -> workings.factorOf(category, link)
                        .map(of)
                        .ifPresent(factor -> parts.add(Input.computed(category.name(), factor))));
        workings.step(formula, null, product, parts.toArray(Input[]::new));
    }
}
