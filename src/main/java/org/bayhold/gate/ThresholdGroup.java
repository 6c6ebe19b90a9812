package org.bayhold.gate;

import java.util.Arrays;
import java.util.List;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.AttributeSet;
import org.bayhold.catalog.FlagAttribute;
import org.bayhold.catalog.NumberAttribute;

/**
 * The thresholds of the drive-log check ({@code docs/drive-log.md}, D16), with what each may be: the one definition that
 * the API, its description and the page go by. Beyond the bounds the check would say nothing, or hold every car (common
 * practice, no source). What is usual stands in {@link org.bayhold.drivelog.Thresholds#DEFAULTS}.
 */
enum ThresholdGroup {
    /** What a log must hold before it can pass. */
    NEEDED(
            number("warmCoolantC", "°C", 40, 110),
            number("idleSeconds", "s", 10, 1_800),
            number("cruiseSeconds", "s", 30, 7_200),
            // 0 asks for no full load at all
            number("fullLoadSeconds", "s", 0, 60),
            number("fullLoadPedalPercent", "%", 50, 95),
            number("pullSeconds", "s", 1, 10),
            new FlagAttribute("needsLambda"),
            number("badSharePercent", "%", 0, 50)),
    /** How far the closed loop may have to correct. */
    CORRECTION(
            number("cruiseTrimPercent", "%", 1, 20),
            number("cellTrimPercent", "%", 1, 25),
            number("cellSeconds", "s", 2, 120),
            number("bankPercent", "%", 1, 20),
            number("leakPercent", "%", 1, 20),
            number("deliveryPercent", "%", 1, 20),
            number("limitSharePercent", "%", 0, 20),
            number("learnedPercent", "%", 0, 25)),
    /** How far full load may stray from what is commanded. */
    FULL_LOAD(
            number("lambdaPercent", "%", 1, 10),
            number("boostPercent", "%", 1, 20),
            number("knockDegrees", "°", 0, 15),
            number("dutyPercent", "%", 50, 100));

    static final AttributeSet ALL = new AttributeSet(
            Arrays.stream(values()).flatMap(group -> group.thresholds.stream()).toList());

    @SuppressWarnings("ImmutableEnumChecker") // a copy of records
    private final List<Attribute> thresholds;

    ThresholdGroup(Attribute... thresholds) {
        this.thresholds = List.of(thresholds);
    }

    List<Attribute> thresholds() {
        return thresholds;
    }

    private static NumberAttribute number(String name, String unit, double least, double most) {
        return new NumberAttribute(name, unit, least, most);
    }
}
