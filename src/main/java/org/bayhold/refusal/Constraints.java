package org.bayhold.refusal;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.util.Comparator;
import java.util.List;

/** Holds a request against its constraints where it is no JSON body of its own, which the framework would hold. */
public final class Constraints {
    private Constraints() {}

    /**
     * @param within the name that each field begins with
     * @throws Refusal INVALID with every constraint that is broken, by field
     */
    public static void hold(Validator validator, Object request, String within) {
        List<Refusal.Reason> reasons = validator.validate(request).stream()
                .sorted(Comparator.comparing(broken -> broken.getPropertyPath().toString()))
                .map(broken -> reason(within, broken))
                .toList();
        if (!reasons.isEmpty()) {
            throw new Refusal(Code.INVALID, reasons);
        }
    }

    private static Refusal.Reason reason(String within, ConstraintViolation<?> broken) {
        String field = within + broken.getPropertyPath();
        return new Refusal.Reason(field, "field.invalid", List.of(field, broken.getMessage()));
    }
}
