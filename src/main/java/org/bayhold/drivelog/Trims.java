package org.bayhold.drivelog;

/** Corrections of the ECU, in percent. {@code docs/drive-log.md, D7}. */
final class Trims {
    private Trims() {}

    /** Both together: they multiply. NaN where one is not known. */
    static double total(Sample sample, Parameter shortTerm, Parameter longTerm) {
        return total(sample.of(shortTerm), sample.of(longTerm));
    }

    static double total(double shortPercent, double longPercent) {
        return ((1 + shortPercent / 100) * (1 + longPercent / 100) - 1) * 100;
    }
}
