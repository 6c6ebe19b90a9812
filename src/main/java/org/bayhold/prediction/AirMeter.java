package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.TRANSFER;

import java.util.List;
import java.util.Optional;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.prediction.Share.Link;

/** Air believed over true air, by the load model of the revision. {@code docs/prediction.md, P4 to P8}. */
final class AirMeter {
    private final Workings workings;
    private final Housing housing;

    AirMeter(Workings workings) {
        this.workings = workings;
        this.housing = new Housing(workings);
    }

    /** What places contribute; each of them differs and is known on both sides. */
    void work(Seat seat) {
        switch (seat.category()) {
            case AIR_INTAKE -> workIntake(seat);
            case AIRFLOW_SENSOR -> workSensor(seat);
            default -> throw new IllegalArgumentException("no air meter: " + seat.place());
        }
    }

    /** The product of the categories; empty where none is known. */
    Optional<Factor> ratio() {
        return List.of(Category.AIR_INTAKE, Category.AIRFLOW_SENSOR, Category.PRESSURE_SENSOR).stream()
                .flatMap(category -> workings.factorOf(category, Link.AIR_METER).stream())
                .reduce(Factor::times);
    }

    private void workIntake(Seat intake) {
        if (workings.assumes.isSpeedDensity()) {
            workings.cannot(intake.place(), new Sentence("prediction.why.speed-density", List.of()));
            return;
        }
        housing.ofIntake(intake).ifPresent(factor -> shareOfHousing(intake, factor));
    }

    /** The curve of a sensor in a housing of its own holds that housing already: the bore would count twice. */
    private void workSensor(Seat sensor) {
        if (workings.assumes.isSpeedDensity()) {
            workings.cannot(sensor.place(), new Sentence("prediction.why.speed-density", List.of()));
            return;
        }
        Optional<Factor> curves = TransferCurves.of(sensor, workings);
        if (curves.isPresent()) {
            workings.share(sensor, Link.AIR_METER, curves.get());
        } else if (!haveCurves(sensor) && Housing.recordsABore(sensor) && !intakeHasTheHousing(sensor)) {
            housing.ratio(sensor).ifPresent(factor -> shareOfHousing(sensor, factor));
        }
    }

    private void shareOfHousing(Seat seat, Factor factor) {
        workings.share(seat, Link.AIR_METER, factor.within(housing.band(seat.place())));
    }

    private static boolean haveCurves(Seat sensor) {
        return TRANSFER.in(sensor.fitted().attributes()).isPresent()
                && TRANSFER.in(sensor.reference().attributes()).isPresent();
    }

    private boolean intakeHasTheHousing(Seat sensor) {
        return workings.build
                .at(new Place(Category.AIR_INTAKE, sensor.place().position()))
                .filter(Housing::recordsABore)
                .isPresent();
    }
}
