package org.bayhold.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
        Mixture mixture = mixture(lambda, links.bandPercent(), workings);
        Input of = Input.computed("lambdaAtTarget", lambda);
        double trim = workings.step(Formula.TRIM_DEMAND, null, mixture.trimDemandPercent(), of);
        workings.step(
                Formula.AUTHORITY_USED,
                null,
                mixture.authorityUsedPercent(),
                Input.computed("trimDemandPercent", trim),
                workings.assumes.trimAuthority());
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
                double lambda = lambda(air.atLoad(), fuel.atLoad(), stoich.atLoad());
                alone.add(new Alone(
                        seat.place(), mixture(lambda, air.bandPercent(), workings), idle(air, fuel, stoich, workings)));
            }
        }
        return alone;
    }

    private static @Nullable Mixture idle(Factor air, Factor fuel, Factor stoich, Workings workings) {
        return air.atIdle() == null || fuel.atIdle() == null || stoich.atIdle() == null
                ? null
                : mixture(lambda(air.atIdle(), fuel.atIdle(), stoich.atIdle()), air.bandPercent(), workings);
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
        links.airMeter().ifPresent(known -> inputs.add(Input.computed("airMeterRatio", air)));
        links.fuelDelivery().ifPresent(known -> inputs.add(Input.computed("fuelDeliveryRatio", fuel)));
        links.stoichiometric().ifPresent(known -> inputs.add(Input.computed("stoichiometricRatio", stoich)));
        return inputs.toArray(Input[]::new);
    }
}
