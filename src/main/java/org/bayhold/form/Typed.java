package org.bayhold.form;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.bayhold.refusal.Refusal.Reason;
import org.jspecify.annotations.Nullable;

/** One form while it is read: each field that cannot be read is remembered, and all of them are told together. */
public final class Typed {
    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

    private final ShopTime times;
    private final Validator validator;
    private final List<Reason> reasons = new ArrayList<>();

    Typed(ShopTime times, Validator validator) {
        this.times = times;
        this.validator = validator;
    }

    /** Remembers what is wrong with a field. */
    public void wrong(@Nullable String field, String key, Object... arguments) {
        reasons.add(new Reason(field, key, List.of(arguments)));
    }

    public void wrong(Refusal refusal) {
        reasons.addAll(refusal.reasons());
    }

    public boolean isRight(String field) {
        return reasons.stream().noneMatch(reason -> field.equals(reason.field()));
    }

    public @Nullable String text(String field, @Nullable String typed) {
        String text = Text.strip(typed);
        if (text != null && text.indexOf('\0') >= 0) { // PostgreSQL cannot store it
            wrong(field, "json.unstorable-text", field);
            return null;
        }
        return text;
    }

    /** What must not be left empty; an empty text then stands in for it until {@link #done}. */
    public String needed(String field, @Nullable String typed) {
        String text = text(field, typed);
        if (text == null && isRight(field)) {
            wrong(field, "form.needed");
        }
        return text == null ? "" : text;
    }

    /** A whole number; blanks and the marks that group its digits are left away. */
    public @Nullable Integer whole(String field, @Nullable String typed) {
        String text = Text.strip(typed);
        if (text == null) {
            return null;
        }
        String digits = text.replaceAll("[\\s.,'\u00a0\u202f]", "");
        if (!WHOLE.matcher(digits).matches()) {
            wrong(field, "form.not-a-whole-number");
            return null;
        }
        return Integer.valueOf(digits);
    }

    public @Nullable Double number(String field, @Nullable String typed) {
        String text = Text.strip(typed);
        try {
            return text == null ? null : Double.valueOf(text.replace(',', '.'));
        } catch (NumberFormatException e) {
            wrong(field, "form.not-a-number");
            return null;
        }
    }

    public @Nullable Instant time(String field, @Nullable String typed) {
        String text = Text.strip(typed);
        try {
            return text == null ? null : times.of(field, text);
        } catch (Refusal refusal) {
            wrong(refusal);
            return null;
        }
    }

    public @Nullable UUID id(String field, @Nullable String typed) {
        String text = Text.strip(typed);
        try {
            return text == null ? null : UUID.fromString(text);
        } catch (IllegalArgumentException e) {
            wrong(field, "form.choose");
            return null;
        }
    }

    public <E extends Enum<E>> @Nullable E choice(String field, @Nullable String typed, Class<E> kind) {
        String text = Text.strip(typed);
        try {
            return text == null ? null : Enum.valueOf(kind, text);
        } catch (IllegalArgumentException e) {
            wrong(field, "form.choose");
            return null;
        }
    }

    public <E extends Enum<E>> E choice(String field, @Nullable String typed, Class<E> kind, E whereNone) {
        E chosen = choice(field, typed, kind);
        return chosen == null ? whereNone : chosen;
    }

    /** Holds the request that was made of the form against its own limits; a field that was wrong before is not told twice. */
    public void check(Object request, String prefix) {
        Set<String> before = new HashSet<>();
        reasons.forEach(reason -> before.add(String.valueOf(reason.field())));
        for (ConstraintViolation<Object> violation : validator.validate(request)) {
            String field = prefix + violation.getPropertyPath();
            if (!before.contains(field)) {
                wrong(field, "form.limit", violation.getMessage());
            }
        }
    }

    /** @throws Refusal INVALID with everything that was wrong */
    public void done() {
        if (!reasons.isEmpty()) {
            throw new Refusal(Code.INVALID, reasons);
        }
    }
}
