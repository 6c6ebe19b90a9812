package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.adjust;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.refitFactory;
import static org.bayhold.support.Facts.remove;

import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RetuneItem;
import org.bayhold.support.RevisionDraft;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code docs/rules.md}, rule 1: any change after the last flash opens a retune item. */
public abstract class Rule1AnyChangeOpens implements OnADatabase {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "AIR_FILTER",
                "AIR_INTAKE",
                "AIRFLOW_SENSOR",
                "AIR_TEMPERATURE_SENSOR",
                "THROTTLE_BODY",
                "INTAKE_MANIFOLD",
                "BYPASS_VALVE",
                "CRANKCASE_VENTILATION",
                "INJECTORS",
                "FUEL_PUMP",
                "HIGH_PRESSURE_FUEL_PUMP",
                "FUEL_PRESSURE_REGULATOR",
                "FUEL",
                "FUEL_QUALITY_SENSOR",
                "AUXILIARY_INJECTION",
                "OXYGEN_SENSOR",
                "TURBOCHARGER",
                "WASTEGATE",
                "BOOST_CONTROL",
                "CHARGE_COOLER",
                "PRESSURE_SENSOR",
                "CAMSHAFT",
                "CAM_TIMING",
                "CYLINDER_HEAD",
                "ROTATING_ASSEMBLY",
                "IGNITION",
                "SPARK_PLUGS",
                "EXHAUST_MANIFOLD",
                "DOWNPIPE",
                "EMISSIONS_EQUIPMENT",
                "EXHAUST_REAR",
                "TRANSMISSION",
                "CLUTCH_AND_FLYWHEEL",
                "TYRES_AND_FINAL_DRIVE",
                "ECU",
                "OTHER_ENGINE"
            })
    void anotherPartAtAnyPlaceWithAnEffect(String category) {
        Car car = shop().registers(aCar());

        Answer change = car.fits(shop().aPartFor(category));

        assertThat(change.field("retuneItemId")).isEqualTo(car.openItem().id());
        assertThat(car.openItem().causes()).containsExactly("PART_CHANGED");
        car.gate().holdsFor("RETUNE_CLEARED");
    }

    @Test
    void aPartWithoutAnEffectOpensNone() {
        FinishedCar finished = shop().finishesACar();

        Answer change = finished.car().fits(shop().aPartFor("COSMETIC"));

        assertThat(change.field("retuneItemId")).isEmpty();
        assertThat(finished.car().findOpenItem()).isEmpty();
        finished.car().gate().isClear();
    }

    @Test
    void theSamePartAgain() {
        FinishedCar finished = shop().finishesACar();
        opensOn(finished.car(), fit(finished.intake()));
    }

    @Test
    void aRemoval() {
        opensOn(shop().finishesACar().car(), remove("AIR_FILTER"));
    }

    @Test
    void anAdjustment() {
        opensOn(shop().finishesACar().car(), adjust("WASTEGATE"));
    }

    @Test
    void theFactoryPartPutBack() {
        opensOn(shop().finishesACar().car(), refitFactory("AIR_INTAKE"));
    }

    @Test
    void aCustomersReportByTelephone() {
        Part pump = shop().aPartFor("FUEL_PUMP");
        opensOn(shop().finishesACar().car(), fit(pump).reported());
    }

    @Test
    void aPartThatNobodyCouldName() {
        Body unnamed = Body.of("category", "AIR_INTAKE")
                .with("action", "FIT")
                .with("source", "SHOP")
                .with("note", "no number on it");
        Car car = shop().finishesACar().car();
        opensOn(car, unnamed);
        assertThat(car.stateOf("AIR_INTAKE")).isEqualTo("UNKNOWN");
        car.gate().holdsFor("PARTS_KNOWN", "PARTS_COVERED");
    }

    @Test
    void aSecondPartOfOneKindIsAPlaceOfItsOwn() {
        Car car = shop().finishesACar().car();
        opensOn(car, fit(shop().aPartFor("INJECTORS")).with("position", "second rail"));
        assertThat(car.stateOf("INJECTORS")).isEqualTo("FACTORY");
    }

    @Test
    void everyLaterCauseJoinsTheOneOpenItem() {
        Car car = shop().finishesACar().car();
        Answer first = car.fits(shop().aPartFor("AIR_INTAKE"));

        Answer second = car.fits(shop().aPartFor("CHARGE_COOLER"));

        assertThat(second.field("retuneItemId")).isEqualTo(first.field("retuneItemId"));
        assertThat(car.openItem().causes()).containsExactly("PART_CHANGED", "PART_CHANGED");
    }

    @Test
    void aFuelThatTheFlashedRevisionNamesOpensNone() {
        Car car = shop().registers(aCar());
        Part ethanol = shop().aPartFor("FUEL");
        car.fits(ethanol);
        Calibration calibration = shop().issues(RevisionDraft.forThe(car).covers(ethanol));
        car.isFinishedWith(calibration);

        Answer report = car.changes(fit(ethanol).reported());

        assertThat(report.field("retuneItemId")).isEmpty();
        car.gate().isClear();
    }

    @Test
    void theFactoryFuelOpensNoneWhereTheRevisionNamesNoFuel() {
        Car car = shop().finishesACar().car();

        Answer report = car.changes(refitFactory("FUEL").reported());

        assertThat(report.field("retuneItemId")).isEmpty();
        car.gate().isClear();
    }

    @Test
    void anyOtherFuelOpensOne() {
        opensOn(shop().finishesACar().car(), fit(shop().aPartFor("FUEL")).reported());
    }

    private static void opensOn(Car finished, Body change) {
        assertThat(finished.findOpenItem()).isEmpty();

        Answer answer = finished.changes(change);

        RetuneItem opened = finished.openItem();
        assertThat(answer.field("retuneItemId")).isEqualTo(opened.id());
        assertThat(opened.causes()).containsExactly("PART_CHANGED");
        finished.gate().holdsFor("FLASH_AFTER_LAST_CHANGE", "RETUNE_CLEARED");
    }
}
