package org.bayhold.prediction;

/**
 * A figure in a sentence that has a unit, so that whoever shows it may show it in another.
 *
 * @param unit as {@link org.bayhold.catalog.NumberAttribute} writes it
 * @param decimals to which it is rounded for reading
 */
public record Amount(double value, String unit, int decimals) {}
