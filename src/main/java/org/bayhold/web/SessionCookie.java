package org.bayhold.web;

import org.bayhold.page.SiteSettings;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.boot.web.server.servlet.ConfigurableServletWebServerFactory;
import org.springframework.stereotype.Component;

/** With TLS the session's cookie is bound to this host and never goes over the air in clear (RFC 6265bis, {@code __Host-}). */
@Component
class SessionCookie implements WebServerFactoryCustomizer<ConfigurableServletWebServerFactory> {
    private final boolean tls;

    SessionCookie(SiteSettings site) {
        this.tls = site.tls();
    }

    @Override
    public void customize(ConfigurableServletWebServerFactory server) {
        if (tls) {
            var cookie = server.getSettings().getSession().getCookie();
            cookie.setName("__Host-bayhold");
            cookie.setSecure(true);
            cookie.setPath("/");
        }
    }
}
