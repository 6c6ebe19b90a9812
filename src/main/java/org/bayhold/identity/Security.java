package org.bayhold.identity;

import org.bayhold.refusal.Code;
import org.bayhold.refusal.Problems;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.Authentication;
import org.springframework.security.oauth2.server.resource.InvalidBearerTokenException;
import org.springframework.security.oauth2.server.resource.authentication.BearerTokenAuthenticationToken;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;

/** Who gets as far as a controller. What a caller may do there is decided by {@link Act}. */
@Configuration(proxyBeanMethods = false)
class Security {
    private static final String TOKENS = "/api/v1/tokens";

    private final Problems problems;

    Security(Problems problems) {
        this.problems = problems;
    }

    /** Making a token is the only call that takes a name and a password. */
    @Bean
    @Order(1)
    SecurityFilterChain signInChain(HttpSecurity http, SignIn signIn) {
        stateless(http)
                .securityMatcher(PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, TOKENS))
                .authenticationManager(new ProviderManager(signIn))
                .httpBasic(basic -> basic.authenticationEntryPoint(unauthenticated("Basic realm=\"Bayhold\"")))
                .authorizeHttpRequests(requests -> requests.anyRequest().authenticated());
        return http.build();
    }

    /** Everything else of the API, and the metrics, take a token and nothing else: no cookie counts here. */
    @Bean
    @Order(2)
    SecurityFilterChain apiChain(HttpSecurity http, AccessTokens tokens) {
        AuthenticationManager byToken = authentication -> authenticate(tokens, authentication);
        stateless(http)
                .securityMatcher("/api/**", "/actuator/**")
                .oauth2ResourceServer(server -> server.authenticationManagerResolver(request -> byToken)
                        .authenticationEntryPoint(unauthenticated("Bearer")))
                .authorizeHttpRequests(requests -> requests.requestMatchers("/actuator/health", "/actuator/health/**")
                        .permitAll()
                        .anyRequest()
                        .authenticated());
        return http.build();
    }

    /** The description of the API is open. */
    @Bean
    @Order(3)
    SecurityFilterChain descriptionChain(HttpSecurity http) {
        stateless(http)
                .securityMatcher("/v3/api-docs", "/v3/api-docs/**")
                .authorizeHttpRequests(requests -> requests.anyRequest().permitAll());
        return http.build();
    }

    private static Authentication authenticate(AccessTokens tokens, Authentication authentication) {
        String token = ((BearerTokenAuthenticationToken) authentication).getToken();
        return tokens.callerOf(token)
                .map(CallerAuthentication::new)
                .orElseThrow(() -> new InvalidBearerTokenException("unknown, revoked or expired"));
    }

    private HttpSecurity stateless(HttpSecurity http) {
        return http.csrf(AbstractHttpConfigurer::disable)
                .formLogin(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .headers(headers -> headers.contentSecurityPolicy(
                        csp -> csp.policyDirectives("default-src 'none'; style-src 'self'; img-src 'self';"
                                + " base-uri 'none'; frame-ancestors 'none'; form-action 'none'")))
                .exceptionHandling(handling -> handling.authenticationEntryPoint(unauthenticated("Bearer"))
                        .accessDeniedHandler(
                                (request, response, denied) -> problems.write(Code.FORBIDDEN, request, response)));
    }

    private AuthenticationEntryPoint unauthenticated(String challenge) {
        return (request, response, failure) -> {
            if (failure instanceof TooManyTriesException tooMany) {
                problems.write(Code.TOO_MANY_REQUESTS, request, response, tooMany.seconds());
                return;
            }
            response.setHeader("WWW-Authenticate", challenge);
            problems.write(Code.UNAUTHENTICATED, request, response);
        };
    }
}
