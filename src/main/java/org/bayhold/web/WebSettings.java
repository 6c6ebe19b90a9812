package org.bayhold.web;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * Settings under {@code bayhold.web}.
 *
 * @param operator whom to call when the server cannot help itself, with a telephone number
 */
@ConfigurationProperties("bayhold.web")
record WebSettings(@Nullable String operator) {}
