package org.bayhold.page;

import java.time.ZoneId;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings under {@code bayhold.site}.
 *
 * @param zone in which the pages show times and take them
 * @param name of the workshop, as its letters say it; empty where nobody set it
 * @param tls people reach the site by HTTPS, whether this server or a proxy before it ends that
 */
@ConfigurationProperties("bayhold.site")
public record SiteSettings(
        @DefaultValue("UTC") ZoneId zone,
        @DefaultValue("") String name,
        @DefaultValue("false") boolean tls) {}
