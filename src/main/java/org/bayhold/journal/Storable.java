package org.bayhold.journal;

import jakarta.validation.Constraint;
import jakarta.validation.ConstraintValidator;
import jakarta.validation.ConstraintValidatorContext;
import jakarta.validation.Payload;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.jspecify.annotations.Nullable;

/** Text that can be kept, as {@link Text#isStorable} has it. JSON bodies are held to it as they are read. */
@Target({ElementType.FIELD, ElementType.PARAMETER})
@Retention(RetentionPolicy.RUNTIME)
@Constraint(validatedBy = Storable.Held.class)
public @interface Storable {
    String message() default "holds a character that cannot be stored";

    Class<?>[] groups() default {};

    Class<? extends Payload>[] payload() default {};

    /** Nothing at all can be kept. */
    final class Held implements ConstraintValidator<Storable, String> {
        @Override
        public boolean isValid(@Nullable String text, ConstraintValidatorContext context) {
            return text == null || Text.isStorable(text);
        }
    }
}
