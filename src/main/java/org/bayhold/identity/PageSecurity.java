package org.bayhold.identity;

import jakarta.servlet.DispatcherType;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.security.web.authentication.SavedRequestAwareAuthenticationSuccessHandler;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.HttpSessionRequestCache;
import org.springframework.util.unit.DataSize;

/**
 * Sign-in of the pages: a form and a session. Sessions live in this server's memory, so a restart ends them and a second
 * server does not know them; what somebody had typed survives that ({@link EndedSession}). No access token counts here.
 */
@Configuration(proxyBeanMethods = false)
class PageSecurity {
    static final String SIGN_IN = "/sign-in";

    private static final String POLICY =
            "default-src 'self'; object-src 'none'; base-uri 'none';" + " frame-ancestors 'none'; form-action 'self'";
    private static final String[] OPEN = {
        SIGN_IN, SIGN_IN + "/**", "/set-up/**", "/css/**", "/js/**", "/webjars/**", "/error", "/favicon.ico"
    };

    @Bean
    @Order(4)
    SecurityFilterChain pageChain(
            HttpSecurity http,
            SignIn signIn,
            Users users,
            @Value("${spring.servlet.multipart.max-request-size}") DataSize largest) {
        HttpSessionRequestCache asked = new HttpSessionRequestCache();
        SavedRequestAwareAuthenticationSuccessHandler toThePageAskedFor =
                new SavedRequestAwareAuthenticationSuccessHandler();
        toThePageAskedFor.setRequestCache(asked);
        EndedSession ended = new EndedSession(toThePageAskedFor, new LoginUrlAuthenticationEntryPoint(SIGN_IN));
        return http.authenticationManager(new ProviderManager(signIn))
                .authorizeHttpRequests(
                        requests -> requests.dispatcherTypeMatchers(DispatcherType.FORWARD, DispatcherType.ERROR)
                                .permitAll()
                                .requestMatchers(OPEN)
                                .permitAll()
                                .anyRequest()
                                .authenticated())
                .requestCache(cache -> cache.requestCache(asked))
                .formLogin(form ->
                        form.loginPage(SIGN_IN).successHandler(ended::signedIn).failureHandler(ended::notSignedIn))
                .logout(logout -> logout.logoutUrl("/sign-out").logoutSuccessUrl(SIGN_IN + "?out"))
                .exceptionHandling(handling ->
                        handling.authenticationEntryPoint(ended::unknown).accessDeniedHandler(ended::refused))
                .addFilterBefore(new OnlySignedInSend(largest.toBytes()), CsrfFilter.class)
                .addFilterBefore(new PresentRoles(users), AnonymousAuthenticationFilter.class)
                .headers(PageSecurity::headers)
                .build();
    }

    private static void headers(HeadersConfigurer<HttpSecurity> headers) {
        headers.contentSecurityPolicy(csp -> csp.policyDirectives(POLICY))
                .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                .crossOriginOpenerPolicy(opener -> opener.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
                .permissionsPolicyHeader(permissions ->
                        permissions.policy("camera=(), microphone=(), geolocation=(), payment=(), usb=()"));
    }
}
