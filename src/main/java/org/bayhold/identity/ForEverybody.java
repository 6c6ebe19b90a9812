package org.bayhold.identity;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A request handler that asks for no role: sign-in, set-up, the way home, one's own password and settings. Which of them want somebody to
 * be signed in is said in {@link PageSecurity}.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface ForEverybody {}
