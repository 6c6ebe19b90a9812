package org.bayhold.catalog;

import static java.util.Map.entry;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What may be recorded of a part, category by category. The bounds are those of what a car can carry: beyond them
 * a figure is a slip of the pen or stands in another unit (common practice, no source).
 */
public final class PartAttributes {
    public static final NumberAttribute SENSOR_BORE_MM = millimetres("sensorBoreMm", 20, 200);
    public static final CurveAttribute TRANSFER = new CurveAttribute("transfer");
    public static final TextAttribute FILTER_KIND = text("filterKind");
    public static final TextAttribute SENSOR_PLACEMENT = text("sensorPlacement");
    public static final TextAttribute DUCT_SHAPE = text("ductShape");
    public static final NumberAttribute FLOW_CC_PER_MIN = number("flowCcPerMin", "cc/min", 20, 20_000);
    public static final NumberAttribute RATED_PRESSURE_KPA = number("ratedPressureKpa", "kPa", 20, 100_000);
    public static final NumberAttribute DEAD_TIME_MS = number("deadTimeMs", "ms", 0.01, 10);
    public static final NumberAttribute BASE_PRESSURE_KPA = number("basePressureKpa", "kPa", 20, 100_000);
    public static final ChoiceAttribute REFERENCE =
            new ChoiceAttribute("reference", List.of(Reference.MANIFOLD, Reference.ATMOSPHERE));
    public static final NumberAttribute ETHANOL_PERCENT = number("ethanolPercent", "%", 0, 100);
    public static final NumberAttribute KPA_AT_ZERO_VOLTS = number("kpaAtZeroVolts", "kPa", -200, 200);
    public static final NumberAttribute KPA_PER_VOLT = number("kpaPerVolt", "kPa/V", 1, 2_000);
    public static final ChoiceAttribute VENTS_TO =
            new ChoiceAttribute("ventsTo", List.of(Vent.INTAKE, Vent.ATMOSPHERE));

    /** What the pressure of a regulator is held against. */
    public static final class Reference {
        public static final String MANIFOLD = "MANIFOLD";
        public static final String ATMOSPHERE = "ATMOSPHERE";

        private Reference() {}
    }

    /** Where a valve lets air go. */
    public static final class Vent {
        public static final String INTAKE = "INTAKE";
        public static final String ATMOSPHERE = "ATMOSPHERE";

        private Vent() {}
    }

    private static final TextAttribute NOTE = new TextAttribute("note", 500);
    private static final NumberAttribute BORE_MM = millimetres("boreMm", 5, 300);
    private static final NumberAttribute FLOW_LITRES_PER_HOUR = number("flowLitresPerHour", "l/h", 5, 5_000);
    private static final NumberAttribute CATALYST_CELLS = number("catalystCellsPerIn2", "/in²", 20, 1_500);
    private static final NumberAttribute COMPRESSION_RATIO = number("compressionRatio", "", 5, 25);

    private static final Map<Category, AttributeSet> OF = sets(Map.ofEntries(
            entry(Category.AIR_FILTER, List.of(FILTER_KIND, BORE_MM, number("surfaceCm2", "cm²", 20, 20_000))),
            entry(
                    Category.AIR_INTAKE,
                    List.of(
                            SENSOR_BORE_MM,
                            FILTER_KIND,
                            SENSOR_PLACEMENT,
                            DUCT_SHAPE,
                            BORE_MM,
                            millimetres("ductLengthMm", 20, 3_000))),
            entry(Category.AIRFLOW_SENSOR, List.of(SENSOR_BORE_MM, TRANSFER)),
            entry(Category.AIR_TEMPERATURE_SENSOR, List.of(number("ohmsAt25C", "Ω", 50, 1_000_000))),
            entry(Category.THROTTLE_BODY, List.of(BORE_MM)),
            entry(
                    Category.INTAKE_MANIFOLD,
                    List.of(millimetres("runnerLengthMm", 20, 1_500), number("plenumLitres", "l", 0.1, 30))),
            entry(Category.BYPASS_VALVE, List.of(VENTS_TO, number("springKpa", "kPa", 1, 500))),
            entry(Category.CRANKCASE_VENTILATION, List.of(VENTS_TO)),
            entry(
                    Category.INJECTORS,
                    List.of(FLOW_CC_PER_MIN, RATED_PRESSURE_KPA, DEAD_TIME_MS, number("coilOhms", "Ω", 0.1, 50))),
            entry(Category.FUEL_PUMP, List.of(FLOW_LITRES_PER_HOUR, RATED_PRESSURE_KPA)),
            entry(
                    Category.HIGH_PRESSURE_FUEL_PUMP,
                    List.of(FLOW_LITRES_PER_HOUR, RATED_PRESSURE_KPA, millimetres("plungerMm", 2, 40))),
            entry(Category.FUEL_PRESSURE_REGULATOR, List.of(BASE_PRESSURE_KPA, REFERENCE)),
            entry(Category.FUEL, List.of(ETHANOL_PERCENT, number("octaneRon", "", 60, 140))),
            entry(Category.AUXILIARY_INJECTION, List.of(FLOW_CC_PER_MIN, RATED_PRESSURE_KPA, text("fluid"))),
            entry(Category.OXYGEN_SENSOR, List.of(new ChoiceAttribute("band", List.of("NARROW", "WIDE")))),
            entry(
                    Category.TURBOCHARGER,
                    List.of(
                            millimetres("compressorInducerMm", 15, 250),
                            millimetres("compressorExducerMm", 15, 300),
                            millimetres("turbineInducerMm", 15, 300),
                            millimetres("turbineExducerMm", 15, 250),
                            number("housingAreaToRadius", "", 0.1, 3))),
            entry(Category.WASTEGATE, List.of(number("springKpa", "kPa", 1, 500), millimetres("portMm", 5, 120))),
            entry(Category.BOOST_CONTROL, List.of(number("ports", "", 2, 6))),
            entry(
                    Category.CHARGE_COOLER,
                    List.of(
                            millimetres("coreThicknessMm", 10, 400),
                            millimetres("coreWidthMm", 50, 1_500),
                            millimetres("coreHeightMm", 50, 1_500))),
            entry(Category.PRESSURE_SENSOR, List.of(KPA_AT_ZERO_VOLTS, KPA_PER_VOLT)),
            entry(
                    Category.CAMSHAFT,
                    List.of(
                            millimetres("intakeLiftMm", 3, 25),
                            millimetres("exhaustLiftMm", 3, 25),
                            number("intakeDurationDeg", "°", 150, 400),
                            number("exhaustDurationDeg", "°", 150, 400))),
            entry(Category.CAM_TIMING, List.of(number("advanceDeg", "°", -60, 60))),
            entry(
                    Category.CYLINDER_HEAD,
                    List.of(
                            number("chamberCc", "cc", 5, 300),
                            millimetres("intakeValveMm", 10, 80),
                            millimetres("exhaustValveMm", 10, 80))),
            entry(
                    Category.ROTATING_ASSEMBLY,
                    List.of(
                            COMPRESSION_RATIO,
                            BORE_MM,
                            millimetres("strokeMm", 20, 200),
                            number("displacementCc", "cc", 100, 15_000))),
            entry(Category.IGNITION, List.of(number("dwellMs", "ms", 0.2, 20))),
            entry(Category.SPARK_PLUGS, List.of(millimetres("gapMm", 0.2, 3), text("heatRange"))),
            entry(Category.EXHAUST_MANIFOLD, List.of(BORE_MM, millimetres("primaryLengthMm", 50, 2_000))),
            entry(Category.DOWNPIPE, List.of(BORE_MM, CATALYST_CELLS)),
            entry(Category.EMISSIONS_EQUIPMENT, List.of(BORE_MM, CATALYST_CELLS)),
            entry(Category.EXHAUST_REAR, List.of(BORE_MM)),
            entry(Category.CLUTCH_AND_FLYWHEEL, List.of(number("torqueNm", "Nm", 50, 5_000))),
            entry(
                    Category.TYRES_AND_FINAL_DRIVE,
                    List.of(number("finalDriveRatio", "", 1, 10), millimetres("rollingCircumferenceMm", 800, 4_000))),
            entry(Category.COSMETIC, List.of(text("colour")))));

    private PartAttributes() {}

    /** What may be recorded of a part of the category; a note of any part. */
    public static AttributeSet of(Category category) {
        return OF.getOrDefault(category, new AttributeSet(List.of(NOTE)));
    }

    private static Map<Category, AttributeSet> sets(Map<Category, List<Attribute>> own) {
        Map<Category, AttributeSet> sets = new EnumMap<>(Category.class);
        own.forEach((category, attributes) -> {
            List<Attribute> all = new ArrayList<>(attributes);
            all.add(NOTE);
            sets.put(category, new AttributeSet(all));
        });
        return sets;
    }

    private static NumberAttribute number(String name, String unit, double least, double most) {
        return new NumberAttribute(name, unit, least, most);
    }

    private static NumberAttribute millimetres(String name, double least, double most) {
        return new NumberAttribute(name, "mm", least, most);
    }

    private static TextAttribute text(String name) {
        return new TextAttribute(name, 60);
    }
}
