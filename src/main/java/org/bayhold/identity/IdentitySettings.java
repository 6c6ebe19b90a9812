package org.bayhold.identity;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings under {@code bayhold.identity}.
 *
 * @param signByDefault a token made by somebody who may sign does sign, unless it says otherwise
 */
@ConfigurationProperties("bayhold.identity")
record IdentitySettings(@DefaultValue("false") boolean signByDefault) {}
