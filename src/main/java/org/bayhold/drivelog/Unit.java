package org.bayhold.drivelog;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The units in which a column may be given, and how each becomes the one that is judged in. {@code docs/drive-log.md, D4}. */
public enum Unit {
    SECONDS(Dimension.TIME, 1, "s", "sec", "secs", "second", "seconds"),
    MILLISECONDS(Dimension.TIME, 1e-3, "ms", "msec", "millis", "millisecond", "milliseconds"),
    MICROSECONDS(Dimension.TIME, 1e-6, "us", "usec", "\u00b5s", "\u03bcs", "microseconds"),
    MINUTES(Dimension.TIME, 60, "min", "mins", "minute", "minutes"),
    RPM(Dimension.ROTATION, 1, "rpm", "1/min", "/min", "min-1", "r/min", "rev/min", "u/min"),
    PERCENT(Dimension.PERCENT, 1, "%", "percent", "pct", "perc"),
    FRACTION(Dimension.PERCENT, 100, "fraction", "0-1", "0..1"),
    CELSIUS(Dimension.TEMPERATURE, 1, "c", "degc", "celsius", "degcelsius", "degreesc", "degreescelsius"),
    FAHRENHEIT(Dimension.TEMPERATURE, 5 / 9.0, -160 / 9.0, "f", "degf", "fahrenheit", "degreesf", "degreesfahrenheit"),
    KELVIN(Dimension.TEMPERATURE, 1, -273.15, "k", "kelvin"),
    KILOPASCAL(Dimension.PRESSURE, 1, "kpa", "kpaabs", "kpaa"),
    PASCAL(Dimension.PRESSURE, 1e-3, "pa", "paabs"),
    MEGAPASCAL(Dimension.PRESSURE, 1e3, "mpa", "mpaabs"),
    HECTOPASCAL(Dimension.PRESSURE, 0.1, "hpa", "mbar", "mbarabs", "hpaabs", "mbara"),
    BAR(Dimension.PRESSURE, 100, "bar", "barabs", "bara"),
    /** 6.894757 kPa: NIST SP 811. */
    PSI(Dimension.PRESSURE, 6.894757, "psi", "psia", "psiabs", "lb/in2", "lbf/in2"),
    /** 3.386389 kPa (0 C): NIST SP 811. */
    INCH_OF_MERCURY(Dimension.PRESSURE, 3.386389, "inhg", "inhgabs", "inchhg"),
    MILLIMETRE_OF_MERCURY(Dimension.PRESSURE, 0.1333224, "mmhg"),
    GRAM_PER_SECOND(Dimension.FLOW, 1, "g/s", "gs", "g/sec", "gps", "gpersec", "grams/sec", "gram/s", "grams/s"),
    KILOGRAM_PER_HOUR(Dimension.FLOW, 1 / 3.6, "kg/h", "kgh", "kg/hr", "kgperhour", "kgph"),
    /** 453.59237 g: exact, NIST SP 811. */
    POUND_PER_MINUTE(Dimension.FLOW, 453.59237 / 60, "lb/min", "lbmin", "lbs/min", "lb/m", "lbpermin"),
    DEGREE(Dimension.ANGLE, 1, "deg", "degree", "degrees", "\u00b0", "\u00b0ca", "degca", "crk", "btdc", "degbtdc"),
    KILOMETRE_PER_HOUR(Dimension.SPEED, 1, "km/h", "kmh", "kph", "kmph", "km/hr"),
    /** 1.609344 km: exact, NIST SP 811. */
    MILE_PER_HOUR(Dimension.SPEED, 1.609344, "mph", "mi/h", "mile/h", "miles/h"),
    METRE_PER_SECOND(Dimension.SPEED, 3.6, "m/s"),
    PULSE_MILLISECONDS(Dimension.PULSE, 1, "ms", "msec"),
    PULSE_MICROSECONDS(Dimension.PULSE, 1e-3, "us", "usec", "\u00b5s", "\u03bcs"),
    LAMBDA(Dimension.MIXTURE, 1, "lambda", "\u03bb", "ratio", "la", "lam"),
    /** A display of air to fuel is scaled by petrol's 14.7, whatever is in the tank: common practice. */
    AIR_FUEL_RATIO(Dimension.MIXTURE, 1 / 14.7, "afr", "a/f", ":1", "air/fuel"),
    VOLT(Dimension.VOLTAGE, 1, "v", "volt", "volts"),
    MILLIVOLT(Dimension.VOLTAGE, 1e-3, "mv"),
    /** Words, or the bits of SAE J1979: no number that is measured. */
    STATUS(Dimension.STATUS, 1, "status", "code", "enum");

    private static final Map<Dimension, Map<String, Unit>> SPELLINGS = new HashMap<>();
    private static final Pattern BLANKS = Pattern.compile("[\\s.]+");

    static {
        for (Unit unit : values()) {
            Map<String, Unit> own = SPELLINGS.computeIfAbsent(unit.dimension, none -> new HashMap<>());
            for (String spelling : unit.spellings.split(" ", -1)) {
                own.putIfAbsent(spelling, unit);
            }
        }
    }

    private final Dimension dimension;
    private final double factor;
    private final double offset;
    /** With a blank between two. */
    private final String spellings;

    Unit(Dimension dimension, double factor, String... spellings) {
        this(dimension, factor, 0, spellings);
    }

    Unit(Dimension dimension, double factor, double offset, String... spellings) {
        this.dimension = dimension;
        this.factor = factor;
        this.offset = offset;
        this.spellings = String.join(" ", spellings);
    }

    Dimension dimension() {
        return dimension;
    }

    double factor() {
        return factor;
    }

    double offset() {
        return offset;
    }

    /** A value of this unit in the one that is judged in: seconds, rpm, percent, C, kPa absolute, g/s, degrees, km/h, ms, lambda, V. */
    public double convert(double value) {
        return value * factor + offset;
    }

    /** Whether a column of this parameter may be given in this unit. */
    public boolean fits(Parameter parameter) {
        return dimension == parameter.dimension();
    }

    /** The unit of this parameter that is written so, by its own name or as a column would write it; null where none is. */
    public static @Nullable Unit of(Parameter parameter, String text) {
        for (Unit unit : values()) {
            if (unit.fits(parameter) && unit.name().equalsIgnoreCase(text.strip())) {
                return unit;
            }
        }
        return of(parameter.dimension(), text);
    }

    /** The unit of the kind that is written so; null where none is. */
    static @Nullable Unit of(Dimension dimension, String text) {
        Map<String, Unit> own = SPELLINGS.getOrDefault(dimension, Map.of());
        String plain = BLANKS.matcher(text.toLowerCase(Locale.ROOT)).replaceAll("");
        for (String form : List.of(
                plain,
                plain.replace('_', '/'),
                plain.replace("\u00b0", ""),
                plain.replace("\u00b0", "deg"),
                plain.replace("(", "").replace(")", ""))) {
            Unit unit = own.get(form);
            if (unit != null) {
                return unit;
            }
        }
        return null;
    }

    /** What a column holds that says nothing of its unit. */
    static Unit usual(Dimension dimension) {
        return switch (dimension) {
            case TIME -> SECONDS;
            case ROTATION -> RPM;
            case PERCENT -> PERCENT;
            case TEMPERATURE -> CELSIUS;
            case PRESSURE -> KILOPASCAL;
            case FLOW -> GRAM_PER_SECOND;
            case ANGLE -> DEGREE;
            case SPEED -> KILOMETRE_PER_HOUR;
            case PULSE -> PULSE_MILLISECONDS;
            case MIXTURE -> LAMBDA;
            case VOLTAGE -> VOLT;
            case STATUS -> STATUS;
        };
    }
}
