package org.bayhold.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;

/**
 * The units in which somebody reads figures. Everything is recorded, computed and answered in SI; this is the one place where
 * it is turned into something else for a page. Units are named by their symbols, as the attributes of parts name them.
 * What has no other unit here is shown as it is: cc/min too, since pounds an hour depend on the density of the fuel.
 */
public enum Units {
    METRIC,
    IMPERIAL;

    /*
     * Exact by definition: NIST Special Publication 811 (2008), appendix B.8 and B.9, and ISO 80000-3 and -4. 1 in = 25.4 mm,
     * 1 mi = 1.609 344 km, 1 lb = 453.592 37 g, standard gravity 9.806 65 m/s2.
     */
    private static final double MM_PER_IN = 25.4;
    private static final double KM_PER_MI = 1.609_344;
    private static final double G_PER_LB = 453.592_37;
    private static final double N_PER_LBF = G_PER_LB / 1000 * 9.806_65;
    private static final double KPA_PER_PSI = N_PER_LBF / (MM_PER_IN * MM_PER_IN) * 1000;
    private static final double NM_PER_LBF_FT = N_PER_LBF * MM_PER_IN * 12 / 1000;

    /**
     * How a unit of SI reads in the other system.
     *
     * @param factor of the other unit to one of SI
     * @param zero what nought of SI is in the other
     * @param decimals that say no less than a metric figure usually does, and no more
     */
    private record Other(String symbol, double factor, double zero, int decimals) {
        Other(String symbol, double factor, int decimals) {
            this(symbol, factor, 0, decimals);
        }
    }

    private static final Map<String, Other> OTHERS = Map.of(
            "mm", new Other("in", 1 / MM_PER_IN, 3),
            "cm²", new Other("in²", 100 / (MM_PER_IN * MM_PER_IN), 2),
            "km", new Other("mi", 1 / KM_PER_MI, 0),
            "kPa", new Other("psi", 1 / KPA_PER_PSI, 1),
            "kPa/V", new Other("psi/V", 1 / KPA_PER_PSI, 2),
            "g/s", new Other("lb/min", 60 / G_PER_LB, 2),
            "Nm", new Other("lbf·ft", 1 / NM_PER_LBF_FT, 1),
            "°C", new Other("°F", 1.8, 32, 1));

    /** Whether a figure in this unit is shown in another. */
    public boolean changes(String unit) {
        return this == IMPERIAL && OTHERS.containsKey(unit);
    }

    /** The symbol of the unit that is shown for one of SI. */
    public String symbol(String unit) {
        Other other = OTHERS.get(unit);
        return this == METRIC || other == null ? unit : other.symbol();
    }

    /** A figure of SI in the unit that is shown for it, not rounded. */
    public double convert(double value, String unit) {
        Other other = OTHERS.get(unit);
        return this == METRIC || other == null ? value : value * other.factor() + other.zero();
    }

    /** A recorded figure with its unit: in SI as it was recorded. */
    public String show(double value, String unit) {
        return show(value, unit, Integer.MAX_VALUE);
    }

    /** A figure with its unit; {@code decimals} are those in SI. */
    public String show(double value, String unit, int decimals) {
        String number = number(value, unit, decimals);
        return unit.isEmpty() ? number : number + " " + symbol(unit);
    }

    /** A figure without its unit; {@code decimals} are those in SI. */
    public String number(double value, String unit, int decimals) {
        Other other = OTHERS.get(unit);
        int kept = this == METRIC || other == null ? decimals : other.decimals();
        return plain(convert(value, unit), kept);
    }

    /** Without an exponent, a grouping, or nought at its end. */
    public static String plain(double figure, int decimals) {
        BigDecimal exact = BigDecimal.valueOf(figure);
        BigDecimal kept = exact.scale() > decimals ? exact.setScale(decimals, RoundingMode.HALF_EVEN) : exact;
        return kept.signum() == 0 ? "0" : kept.stripTrailingZeros().toPlainString();
    }
}
