package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.ETHANOL_PERCENT;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Share.Link;

/** Fuel delivered over what the ECU believes, and the air that the fuel asks for. {@code docs/prediction.md, P10 to P13}. */
final class FuelDelivery {
    private final Workings workings;

    FuelDelivery(Workings workings) {
        this.workings = workings;
    }

    /** What places contribute; each of them differs and is known on both sides. */
    void work(Seat seat) {
        switch (seat.category()) {
            case INJECTORS -> share(seat, Injectors.of(seat, workings));
            case FUEL_PRESSURE_REGULATOR -> share(seat, new FuelPressure(workings).of(seat));
            case FUEL -> workFuel(seat);
            default -> throw new IllegalArgumentException("no fuel metering: " + seat.place());
        }
    }

    /** The product of flow, pressure and density; empty where none is known. */
    Optional<Factor> ratio() {
        return List.of(Category.INJECTORS, Category.FUEL_PRESSURE_REGULATOR, Category.FUEL).stream()
                .flatMap(category -> workings.factorOf(category, Link.FUEL_DELIVERY).stream())
                .reduce(Factor::times);
    }

    Optional<Factor> stoichiometric() {
        return workings.factorOf(Category.FUEL, Link.STOICHIOMETRIC);
    }

    private void share(Seat seat, Optional<Factor> factor) {
        factor.ifPresent(known -> workings.share(seat, Link.FUEL_DELIVERY, known));
    }

    private void workFuel(Seat fuel) {
        OptionalDouble inst = workings.fitted(fuel, ETHANOL_PERCENT);
        OptionalDouble cal = workings.calibrated(fuel, ETHANOL_PERCENT);
        if (inst.isEmpty() || cal.isEmpty()) {
            return;
        }
        Blend tank = new Blend(inst.getAsDouble());
        Blend calibrated = new Blend(cal.getAsDouble());
        double densityInst = density(workings, fuel, tank, fitted(tank));
        double densityCal = density(workings, fuel, calibrated, calibrated(calibrated));
        double density = step(
                Formula.FUEL_DENSITY,
                fuel,
                Math.sqrt(densityInst / densityCal),
                Input.computed("densityKgPerLitre_inst", densityInst),
                Input.computed("densityKgPerLitre_cal", densityCal));
        double stoichInst = stoichiometry(workings, fuel, tank, fitted(tank));
        double stoichCal = stoichiometry(workings, fuel, calibrated, calibrated(calibrated));
        double stoichiometric = step(
                Formula.STOICHIOMETRIC_RATIO,
                fuel,
                stoichCal / stoichInst,
                Input.computed("stoich_inst", stoichInst),
                Input.computed("stoich_cal", stoichCal));
        workings.share(fuel, Link.FUEL_DELIVERY, Factor.everywhere(density));
        workings.share(fuel, Link.STOICHIOMETRIC, Factor.everywhere(stoichiometric));
    }

    private double step(Formula formula, Seat fuel, double value, Input... inputs) {
        return workings.step(formula, fuel.place(), value, inputs);
    }

    static double density(Workings workings, Seat fuel, Blend blend, Input ethanolPercent) {
        return workings.step(
                Formula.BLEND_DENSITY,
                fuel.place(),
                blend.densityKgPerLitre(),
                ethanolPercent,
                Input.constant("ethanolKgPerLitre", Blend.ETHANOL_KG_PER_LITRE),
                Input.constant("gasolineKgPerLitre", Blend.GASOLINE_KG_PER_LITRE));
    }

    static double stoichiometry(Workings workings, Seat fuel, Blend blend, Input ethanolPercent) {
        return workings.step(
                Formula.BLEND_STOICHIOMETRY,
                fuel.place(),
                blend.stoichiometry(),
                ethanolPercent,
                Input.constant("ethanolKgPerLitre", Blend.ETHANOL_KG_PER_LITRE),
                Input.constant("gasolineKgPerLitre", Blend.GASOLINE_KG_PER_LITRE),
                Input.constant("stoichEthanol", Blend.STOICH_ETHANOL),
                Input.constant("stoichGasoline", Blend.STOICH_GASOLINE));
    }

    private static Input fitted(Blend blend) {
        return Input.fitted(ETHANOL_PERCENT.name(), blend.ethanolPercent());
    }

    private static Input calibrated(Blend blend) {
        return Input.calibrated(ETHANOL_PERCENT.name(), blend.ethanolPercent());
    }
}
