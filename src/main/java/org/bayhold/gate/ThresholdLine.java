package org.bayhold.gate;

import java.util.List;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.FlagAttribute;
import org.bayhold.catalog.NumberAttribute;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.page.Units;
import tools.jackson.databind.JsonNode;

/**
 * A threshold of the drive-log check beside its value in other thresholds: the defaults, or those of the version before.
 *
 * @param now a number or a boolean, as is {@code other}
 */
record ThresholdLine(Attribute threshold, Object now, Object other) {
    static List<ThresholdLine> of(List<Attribute> thresholds, Thresholds now, Thresholds other, CanonicalJson json) {
        JsonNode ofNow = json.tree(now);
        JsonNode ofOther = json.tree(other);
        return thresholds.stream()
                .map(threshold -> new ThresholdLine(
                        threshold, plain(ofNow.path(threshold.name())), plain(ofOther.path(threshold.name()))))
                .toList();
    }

    private static Object plain(JsonNode value) {
        return value.isBoolean() ? (Object) value.booleanValue() : (Object) value.doubleValue();
    }

    public String name() {
        return threshold.name();
    }

    /** Its name in a form and in a refusal. */
    public String field() {
        return field(threshold);
    }

    static String field(Attribute threshold) {
        return PolicyRequest.THRESHOLDS + "." + threshold.name();
    }

    /** Whether it is a question and no figure. */
    public boolean isAsked() {
        return threshold instanceof FlagAttribute;
    }

    public boolean differs() {
        return !now.equals(other);
    }

    /** What a field of a form shows of it. */
    public Object typed() {
        return now instanceof Double figure ? Units.plain(figure, Integer.MAX_VALUE) : shown(now);
    }

    public Object shownNow() {
        return shown(now);
    }

    public Object shownOther() {
        return shown(other);
    }

    public String unit() {
        return threshold instanceof NumberAttribute number ? number.unit() : "";
    }

    /** In the unit in which it is set, whoever reads. */
    private Object shown(Object value) {
        return value instanceof Boolean asked ? Asked.of(asked) : threshold.show(value, Units.METRIC);
    }
}
