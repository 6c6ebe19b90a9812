package org.bayhold.prediction;

import static org.bayhold.prediction.Input.Origin.ASSUMED;
import static org.bayhold.prediction.Input.Origin.DEFAULT;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bayhold.catalog.AttributeSet;
import org.bayhold.catalog.ChoiceAttribute;
import org.bayhold.catalog.NumberAttribute;

/**
 * What a revision assumes of the car, and what is taken where it says nothing: common practice, no source. The bounds
 * are those beyond which a figure is a slip or stands in another unit.
 */
public final class Assumptions {
    static final ChoiceAttribute LOAD_MODEL =
            new ChoiceAttribute("loadModel", List.of("AIRFLOW_SENSOR", "SPEED_DENSITY"));
    static final ChoiceAttribute IGNITION = new ChoiceAttribute("ignition", List.of("SPARK", "COMPRESSION"));
    static final NumberAttribute TRIM_AUTHORITY_PERCENT = new NumberAttribute("trimAuthorityPercent", "%", 1, 100);
    static final NumberAttribute IDLE_AIRFLOW_G_PER_S = new NumberAttribute("idleAirflowGPerS", "g/s", 0.1, 100);
    static final NumberAttribute CRUISE_AIRFLOW_G_PER_S = new NumberAttribute("cruiseAirflowGPerS", "g/s", 0.5, 1_000);
    static final NumberAttribute PEAK_AIRFLOW_G_PER_S = new NumberAttribute("peakAirflowGPerS", "g/s", 1, 5_000);
    static final NumberAttribute PEAK_LAMBDA = new NumberAttribute("peakLambda", "", 0.5, 1.3);
    static final NumberAttribute FUEL_PRESSURE_KPA = new NumberAttribute("fuelPressureKpa", "kPa", 20, 100_000);
    static final NumberAttribute MANIFOLD_GAUGE_KPA = new NumberAttribute("manifoldGaugeKpa", "kPa", -110, 1_000);
    static final NumberAttribute BAROMETRIC_KPA = new NumberAttribute("barometricKpa", "kPa", 40, 110);
    static final NumberAttribute IDLE_PULSE_MS = new NumberAttribute("idlePulseMs", "ms", 0.1, 30);
    static final NumberAttribute INJECTOR_COUNT = new NumberAttribute("injectorCount", "", 1, 24);

    /** All of them, for validation, forms and documents. */
    public static final AttributeSet ALL = new AttributeSet(List.of(
            LOAD_MODEL,
            IGNITION,
            TRIM_AUTHORITY_PERCENT,
            IDLE_AIRFLOW_G_PER_S,
            CRUISE_AIRFLOW_G_PER_S,
            PEAK_AIRFLOW_G_PER_S,
            PEAK_LAMBDA,
            FUEL_PRESSURE_KPA,
            MANIFOLD_GAUGE_KPA,
            BAROMETRIC_KPA,
            IDLE_PULSE_MS,
            INJECTOR_COUNT));

    private final Map<String, Object> recorded;

    Assumptions(Map<String, Object> recorded) {
        this.recorded = recorded;
    }

    boolean isSpeedDensity() {
        return LOAD_MODEL.in(recorded).filter("SPEED_DENSITY"::equals).isPresent();
    }

    boolean isCompressionIgnition() {
        return isCompressionIgnition(recorded);
    }

    /** Whether a revision that assumes this is for an engine that ignites by compression. */
    public static boolean isCompressionIgnition(Map<String, Object> recorded) {
        return IGNITION.in(recorded).filter("COMPRESSION"::equals).isPresent();
    }

    Input trimAuthority() {
        return or(TRIM_AUTHORITY_PERCENT, 25);
    }

    Input idleAirflow() {
        return or(IDLE_AIRFLOW_G_PER_S, 4);
    }

    Input cruiseAirflow() {
        return or(CRUISE_AIRFLOW_G_PER_S, 15);
    }

    Optional<Input> peakAirflow() {
        return in(PEAK_AIRFLOW_G_PER_S);
    }

    Input peakLambda() {
        return or(PEAK_LAMBDA, 0.80);
    }

    Optional<Input> fuelPressure() {
        return in(FUEL_PRESSURE_KPA);
    }

    Optional<Input> manifoldGauge() {
        return in(MANIFOLD_GAUGE_KPA);
    }

    /** The standard atmosphere at sea level, ISO 2533, where nothing is said. */
    Input barometric() {
        return or(BAROMETRIC_KPA, 101.325);
    }

    Input idlePulse() {
        return or(IDLE_PULSE_MS, 2.5);
    }

    Optional<Input> injectorCount() {
        return in(INJECTOR_COUNT);
    }

    private Input or(NumberAttribute attribute, double standard) {
        return in(attribute).orElseGet(() -> new Input(attribute.name(), standard, DEFAULT));
    }

    private Optional<Input> in(NumberAttribute attribute) {
        return attribute.in(recorded).stream()
                .mapToObj(value -> new Input(attribute.name(), value, ASSUMED))
                .findFirst();
    }
}
