package org.bayhold.gate;

import java.util.LinkedHashMap;
import java.util.Map;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.FlagAttribute;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.page.Form;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The policy as the fields of a form. */
@Component
class PolicyForm {
    static final String HOURS = "readBackMaxAgeHours";

    private final CanonicalJson json;

    PolicyForm(CanonicalJson json) {
        this.json = json;
    }

    /** What may be asked for or not, in the order in which the gate asks. */
    static Map<String, Boolean> asked(Policy policy) {
        Map<String, Boolean> asked = new LinkedHashMap<>();
        asked.put("readBackRequired", policy.readBackRequired());
        asked.put("troubleCodesChecked", policy.troubleCodesChecked());
        asked.put("driveLogRequired", policy.driveLogRequired());
        asked.put("acknowledgementRequired", policy.acknowledgementRequired());
        asked.put("secondPersonRequired", policy.secondPersonRequired());
        return asked;
    }

    /** What the fields show before anybody types. */
    void fill(Form form, Policy policy, Thresholds thresholds) {
        asked(policy).forEach((field, yes) -> form.with(field, Asked.of(yes)));
        form.with(HOURS, policy.readBackMaxAgeHours());
        ThresholdLine.of(ThresholdGroup.ALL.attributes(), thresholds, thresholds, json)
                .forEach(line -> form.with(line.field(), line.typed()));
    }

    /** What was typed; a field that was left empty is left out. */
    PolicyRequest read(Form form) {
        return new PolicyRequest(
                yes(form, "readBackRequired"),
                form.integer(HOURS),
                yes(form, "troubleCodesChecked"),
                yes(form, "driveLogRequired"),
                yes(form, "acknowledgementRequired"),
                yes(form, "secondPersonRequired"),
                thresholds(form));
    }

    static boolean isWrongAmongThresholds(Form form) {
        return form.errors().keySet().stream().anyMatch(field -> field.startsWith(PolicyRequest.THRESHOLDS));
    }

    private static Map<String, @Nullable Object> thresholds(Form form) {
        Map<String, @Nullable Object> typed = new LinkedHashMap<>();
        for (Attribute threshold : ThresholdGroup.ALL.attributes()) {
            String field = ThresholdLine.field(threshold);
            typed.put(threshold.name(), threshold instanceof FlagAttribute ? yes(form, field) : form.decimal(field));
        }
        return typed;
    }

    private static @Nullable Boolean yes(Form form, String field) {
        Asked asked = form.choice(field, Asked.class);
        return asked == null ? null : asked == Asked.YES;
    }
}
