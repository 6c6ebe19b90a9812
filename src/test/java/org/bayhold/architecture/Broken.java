package org.bayhold.architecture;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.function.Function;
import java.util.stream.Stream;

/** Conditions that are told as the list of what breaks them. */
final class Broken {
    private Broken() {}

    static ArchCondition<JavaClass> by(String what, Function<JavaClass, Stream<String>> breaches) {
        return new ArchCondition<>("have no " + what) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                breaches.apply(type).forEach(breach -> events.add(SimpleConditionEvent.violated(type, breach)));
            }
        };
    }

    /** The simple name of the outermost class: a rule speaks of a class with everything inside it. */
    static String outermost(JavaClass type) {
        return type.getEnclosingClass().map(Broken::outermost).orElse(type.getSimpleName());
    }
}
