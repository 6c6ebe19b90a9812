package org.bayhold.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.bayhold.catalog.Place;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Share.Link;
import org.jspecify.annotations.Nullable;

/** From ratios to lambda, and from lambda to the trim that it asks for. {@code docs/prediction.md, P2 and P15}. */
final class Chain {
    private Chain() {}

    /** The ratios of a car, those that are known. */
    record Links(Optional<Factor> airMeter, Optional<Factor> fuelDelivery, Optional<Factor> stoichiometric) {
        boolean isEmpty() {
            return airMeter.isEmpty() && fuelDelivery.isEmpty() && stoichiometric.isEmpty();
        }

        /** Of the meter's estimate; null where there is none. */
        @Nullable Double bandPercent() {
            return airMeter.map(Factor::bandPercent).orElse(null);
        }
    }

    /** Where the calibration asks for 1.000, open loop. */
    static double lambda(double airMeterRatio, double fuelDeliveryRatio, double stoichiometricRatio) {
        return stoichiometricRatio / (airMeterRatio * fuelDeliveryRatio);
    }

    /** The extra fuel, in percent, that comes back to lambda 1: a fifth too little asks for a quarter more. */
    static double trimDemandPercent(double lambda) {
        return (lambda - 1) * 100;
    }

    /** What is left after a closed loop has done what it may. */
    static double lambdaLeft(double lambda, double authorityPercent) {
        double trim = Math.max(-authorityPercent, Math.min(authorityPercent, trimDemandPercent(lambda)));
        return lambda / (1 + trim / 100);
    }

    static @Nullable Mixture atLoad(Links links, Workings workings) {
        if (links.isEmpty()) {
            return null;
        }
        double air = links.airMeter().map(Factor::atLoad).orElse(1.0);
        double fuel = links.fuelDelivery().map(Factor::atLoad).orElse(1.0);
        double stoich = links.stoichiometric().map(Factor::atLoad).orElse(1.0);
        double lambda =
                workings.step(Formula.LAMBDA, null, lambda(air, fuel, stoich), inputs(links, air, fuel, stoich));
        return traced(mixture(lambda, links.bandPercent(), workings), links.bandPercent(), null, workings);
    }

    /** Writes down what follows from a lambda. */
    private static Mixture traced(
            Mixture mixture, @Nullable Double bandPercent, @Nullable Place place, Workings workings) {
        Input of = Input.computed("lambdaAtTarget", mixture.lambda());
        if (bandPercent != null && mixture.lambdaLow() != null && mixture.lambdaHigh() != null) {
            Input band = Input.computed("airMeterBandPercent", bandPercent);
            workings.step(Formula.LAMBDA_LOW, place, mixture.lambdaLow(), of, band);
            workings.step(Formula.LAMBDA_HIGH, place, mixture.lambdaHigh(), of, band);
        }
        double demand = workings.step(Formula.TRIM_DEMAND, place, mixture.trimDemandPercent(), of);
        Input trim = Input.computed("trimDemandPercent", demand);
        Input authority = workings.assumes.trimAuthority();
        workings.step(Formula.AUTHORITY_USED, place, mixture.authorityUsedPercent(), trim, authority);
        workings.step(Formula.LAMBDA_LEFT, place, mixture.lambdaLeft(), of, trim, authority);
        return mixture;
    }

    static @Nullable Mixture atIdle(Links links, Workings workings) {
        Double air = atIdle(links.airMeter());
        Double fuel = atIdle(links.fuelDelivery());
        Double stoich = atIdle(links.stoichiometric());
        if (links.isEmpty() || air == null || fuel == null || stoich == null) {
            return null;
        }
        double lambda = workings.step(
                Formula.LAMBDA_AT_IDLE, null, lambda(air, fuel, stoich), inputs(links, air, fuel, stoich));
        return mixture(lambda, links.bandPercent(), workings);
    }

    /** Each place for itself, from what it contributes. */
    static List<Alone> alone(List<Seat> differing, Workings workings) {
        List<Alone> alone = new ArrayList<>();
        for (Seat seat : differing) {
            Factor air = shareOf(seat.place(), Link.AIR_METER, workings);
            Factor fuel = shareOf(seat.place(), Link.FUEL_DELIVERY, workings);
            Factor stoich = shareOf(seat.place(), Link.STOICHIOMETRIC, workings);
            if (workings.shares().stream().anyMatch(share -> share.place().equals(seat.place()))) {
                double lambda = workings.step(
                        Formula.LAMBDA,
                        seat.place(),
                        lambda(air.atLoad(), fuel.atLoad(), stoich.atLoad()),
                        shares(seat.place(), workings, Factor::atLoad));
                Mixture mixture = mixture(lambda, air.bandPercent(), workings);
                alone.add(new Alone(
                        seat.place(),
                        traced(mixture, air.bandPercent(), seat.place(), workings),
                        idle(seat.place(), air, fuel, stoich, workings)));
            }
        }
        return alone;
    }

    private static @Nullable Mixture idle(Place place, Factor air, Factor fuel, Factor stoich, Workings workings) {
        if (air.atIdle() == null || fuel.atIdle() == null || stoich.atIdle() == null) {
            return null;
        }
        double lambda = workings.step(
                Formula.LAMBDA_AT_IDLE,
                place,
                lambda(air.atIdle(), fuel.atIdle(), stoich.atIdle()),
                shares(place, workings, Factor::atIdle));
        return mixture(lambda, air.bandPercent(), workings);
    }

    /** What a place contributes, by name. */
    private static Input[] shares(Place place, Workings workings, Function<Factor, @Nullable Double> of) {
        List<Input> inputs = new ArrayList<>();
        for (Share share : workings.shares()) {
            Double factor = of.apply(share.factor());
            if (share.place().equals(place) && factor != null) {
                inputs.add(Input.computed(ratio(share.link()), factor));
            }
        }
        return inputs.toArray(Input[]::new);
    }

    private static String ratio(Link link) {
        return switch (link) {
            case AIR_METER -> "airMeterRatio";
            case FUEL_DELIVERY -> "fuelDeliveryRatio";
            case STOICHIOMETRIC -> "stoichiometricRatio";
        };
    }

    /** One place has one share in a link, or none: then the link is not its own. */
    private static Factor shareOf(Place place, Link link, Workings workings) {
        return workings.shares().stream()
                .filter(share -> share.place().equals(place) && share.link() == link)
                .map(Share::factor)
                .reduce(Factor.ONE, Factor::times);
    }

    private static Mixture mixture(double lambda, @Nullable Double bandPercent, Workings workings) {
        double trim = trimDemandPercent(lambda);
        double authority = workings.assumes.trimAuthority().value();
        return new Mixture(
                lambda,
                bandPercent == null ? null : lambda / (1 + bandPercent / 100),
                bandPercent == null ? null : lambda / (1 - bandPercent / 100),
                trim,
                Math.abs(trim) / authority * 100,
                lambdaLeft(lambda, authority));
    }

    /** A link in which nothing differs is 1; one in which something differs and is not known at idle is null. */
    private static @Nullable Double atIdle(Optional<Factor> link) {
        return link.isEmpty() ? Double.valueOf(1) : link.get().atIdle();
    }

    private static Input[] inputs(Links links, double air, double fuel, double stoich) {
        List<Input> inputs = new ArrayList<>();
        links.airMeter().ifPresent(known -> inputs.add(Input.computed(ratio(Link.AIR_METER), air)));
        links.fuelDelivery().ifPresent(known -> inputs.add(Input.computed(ratio(Link.FUEL_DELIVERY), fuel)));
        links.stoichiometric().ifPresent(known -> inputs.add(Input.computed(ratio(Link.STOICHIOMETRIC), stoich)));
        return inputs.toArray(Input[]::new);
    }
}
