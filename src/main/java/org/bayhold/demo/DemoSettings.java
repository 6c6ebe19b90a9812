package org.bayhold.demo;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings under {@code bayhold.demo}.
 *
 * @param password of every demo user; a random one, printed at the start, where it is left out
 * @param empty users only, without the invented shop
 */
@ConfigurationProperties("bayhold.demo")
record DemoSettings(
        @Nullable String password, @DefaultValue("false") boolean empty) {}
