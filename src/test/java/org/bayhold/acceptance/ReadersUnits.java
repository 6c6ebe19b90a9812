package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aPart;

import java.util.List;
import java.util.Map;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.Test;

/** Somebody may read figures in other units; what is recorded, signed and answered by the API is the same for all. */
public abstract class ReadersUnits implements OnADatabase {
    private static final List<List<Double>> TABLE =
            List.of(List.of(0.5, 1.0), List.of(1.0, 8.0), List.of(2.0, 40.0), List.of(4.0, 150.0));
    private static final List<List<Double>> OTHER =
            List.of(List.of(0.5, 1.5), List.of(1.0, 9.0), List.of(2.0, 45.0), List.of(4.0, 160.0));

    @Test
    void oneReadsPsiAndInchesAndTheOtherKilopascalsAndMillimetres() {
        Part intake = intake(66);
        Car car = shop().registers(aCar());
        car.fits(intake);
        Calibration calibration = shop().issues(RevisionDraft.forThe(car)
                .covers(intake)
                .with("boostTargetKpa", 150)
                .with("assumes", Body.of("peakAirflowGPerS", 180)));
        Visitor imperial = readsImperial(Role.CALIBRATOR);
        try {
            Visitor metric = shop().visitor(Role.MANAGER);

            assertThat(text(imperial, "/parts/" + intake.id()))
                    .contains("2.598 in")
                    .doesNotContain("66 mm");
            assertThat(text(metric, "/parts/" + intake.id())).contains("66 mm").doesNotContain(" in,");
            assertThat(text(imperial, "/calibrations/" + calibration.id())).contains("21.8 psi", "23.81 lb/min");
            assertThat(text(metric, "/calibrations/" + calibration.id())).contains("150 kPa", "180 g/s");
            assertThat(text(imperial, "/cars/" + car.id())).contains("29950 mi").doesNotContain("48200 km");
            assertThat(text(metric, "/cars/" + car.id())).contains("48200 km").doesNotContain(" mi ");
        } finally {
            chooses(imperial, "METRIC");
        }
    }

    /** The figures, their sentences, the pictures and the working. */
    @Test
    void aPredictionIsReadInOnesUnitsAndStoredInSi() {
        Car car = predicted();
        Visitor imperial = readsImperial(Role.CALIBRATOR);
        try {
            String page = text(imperial, "/cars/" + car.id());
            assertThat(page)
                    .contains("would reach 26.1 psi absolute")
                    .contains("At 23.81 lb/min the sensor is saturated")
                    .contains("airflow, lb/min")
                    // in the working: as the formula has it, and as it is read
                    .contains("150 kPa (21.8 psi)");
            assertThat(text(imperial, "/cars/" + car.id() + "/hand-over")).contains("airflow, lb/min", "26.1 psi");
            assertThat(text(shop().visitor(Role.MANAGER), "/cars/" + car.id()))
                    .contains("would reach 180 kPa absolute", "airflow, g/s")
                    .doesNotContain("psi", "lb/min");
            String api = shop().as(Role.CALIBRATOR)
                    .get("/vehicles/" + car.id() + "/gate")
                    .is(200)
                    .json()
                    .path("prediction")
                    .toString();
            assertThat(api)
                    .contains("would reach 180 kPa absolute", "At 180 g/s the sensor is saturated")
                    .doesNotContain("psi");
        } finally {
            chooses(imperial, "METRIC");
        }
    }

    /** Paper goes to people whose settings nobody knows. */
    @Test
    void aCertificateIsInSiWhoeverPrintsIt() {
        FinishedCar finished = shop().finishesACar();
        String handoff = finished.car()
                .asksToLeave(Body.of("odometerKm", 48_300))
                .is(201)
                .id();
        Visitor imperial = readsImperial(Role.CALIBRATOR);
        try {
            assertThat(text(imperial, "/handoffs/" + handoff + "/certificate"))
                    .contains("48300 km")
                    .doesNotContain(" mi ");
            assertThat(text(imperial, "/cars/" + finished.car().id())).contains("30012 mi");
        } finally {
            chooses(imperial, "METRIC");
        }
    }

    @Test
    void theSettingIsKeptWithThePersonAndNotWithTheSession() {
        Visitor imperial = readsImperial(Role.AUDITOR);
        try {
            Visitor elsewhere = shop().visitor(Role.AUDITOR);
            assertThat(elsewhere.opens("/settings").is(200).html())
                    .containsPattern("value=\"IMPERIAL\"[^>]*checked")
                    .doesNotContainPattern("value=\"METRIC\"[^>]*checked");
        } finally {
            chooses(imperial, "METRIC");
        }
    }

    @Test
    void whatIsNoChoiceIsRefusedAtItsField() {
        Visitor technician = shop().visitor(Role.TECH);
        technician.opens("/settings").is(200);
        assertThat(technician
                        .sends("/settings", Map.of("units", "CUBITS"))
                        .is(400)
                        .html())
                .contains("class=\"error\"");
        technician.opens("/settings");
        assertThat(technician.sends("/settings", Map.of()).is(400).html()).contains("class=\"error\"");
        assertThat(shop().visitor().opens("/settings").path()).isEqualTo("/sign-in");
    }

    private Car predicted() {
        Car car = shop().registers(aCar());
        Part sensor = part("AIRFLOW_SENSOR", Body.of("transfer", TABLE));
        Part pressure = part("PRESSURE_SENSOR", Body.of("kpaAtZeroVolts", 0).with("kpaPerVolt", 50));
        car.fits(sensor);
        car.fits(pressure);
        car.flashes(shop().issues(RevisionDraft.forThe(car)
                .covers(sensor)
                .covers(pressure)
                .with("boostTargetKpa", 150)
                .with("assumes", Body.of("peakAirflowGPerS", 180))));
        car.fits(part("AIRFLOW_SENSOR", Body.of("transfer", OTHER)));
        car.fits(part("PRESSURE_SENSOR", Body.of("kpaAtZeroVolts", 0).with("kpaPerVolt", 60)));
        return car;
    }

    private Part intake(double boreMm) {
        return part("AIR_INTAKE", Body.of("sensorBoreMm", boreMm));
    }

    private Part part(String category, Body attributes) {
        return shop().catalogues(aPart(category).with("attributes", attributes));
    }

    private Visitor readsImperial(Role role) {
        Visitor visitor = shop().visitor(role);
        chooses(visitor, "IMPERIAL");
        return visitor;
    }

    private static void chooses(Visitor visitor, String units) {
        visitor.opens("/settings").is(200);
        assertThat(visitor.sends("/settings", Map.of("units", units)).is(200).text())
                .contains("Figures are shown to you like this from now on.");
    }

    private static String text(Visitor visitor, String path) {
        return visitor.opens(path).is(200).text();
    }
}
