package org.bayhold.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.identity.Act;
import org.bayhold.identity.Needs;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Role;
import org.bayhold.support.RunningBayhold;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import tools.jackson.databind.JsonNode;

/** Every route that the running server has, tried by every role and by nobody: who is let in is what the table of roles says. */
class EveryRouteEveryRoleTest {
    private static final RunningBayhold RUNNING = RunningBayhold.onH2();
    private static final Shop SHOP = RUNNING.shop();
    private static final JsonNode DESCRIPTION =
            SHOP.anonymous().getOutside("/v3/api-docs").is(200).json();
    private static final String SIGN_IN = "POST /api/v1/tokens";

    private static final Map<Role, org.bayhold.identity.Role> ROLES = new EnumMap<>(Map.of(
            Role.WRITER, org.bayhold.identity.Role.WRITER,
            Role.TECH, org.bayhold.identity.Role.TECHNICIAN,
            Role.CALIBRATOR, org.bayhold.identity.Role.CALIBRATOR,
            Role.MANAGER, org.bayhold.identity.Role.MANAGER,
            Role.AUDITOR, org.bayhold.identity.Role.AUDITOR,
            Role.ADMIN, org.bayhold.identity.Role.ADMINISTRATOR));

    /** The one route that takes a file. */
    private static final String FILE = "POST /api/v1/vehicles/{id}/drive-logs";

    /** A route and what it needs. */
    record Route(RequestMethod method, String pattern, Act act) {
        /** Aimed at nothing that exists, with an empty body: whoever is let in is told so, and nothing changes. */
        Answer triedBy(Api api) {
            String path = pattern.replace("{id}", UUID.randomUUID().toString())
                    .replace("{logId}", UUID.randomUUID().toString())
                    .replace("{category}", "COSMETIC");
            assertThat(path).as("a value for each variable of the path").doesNotContain("{");
            if (toString().equals(FILE)) {
                return api.postFile(path, new byte[0], Map.of());
            }
            return api.send(method.name(), path, "{}");
        }

        @Override
        public String toString() {
            return method + " " + pattern;
        }
    }

    static Stream<Route> routes() {
        return RUNNING
                .bean("requestMappingHandlerMapping", RequestMappingHandlerMapping.class)
                .getHandlerMethods()
                .entrySet()
                .stream()
                .filter(entry -> entry.getValue().getBeanType().getName().startsWith("org.bayhold."))
                .flatMap(entry -> entry.getKey().getPatternValues().stream()
                        .filter(pattern -> pattern.startsWith("/api/v1/"))
                        .flatMap(pattern -> entry.getKey().getMethodsCondition().getMethods().stream()
                                .map(method -> new Route(
                                        method,
                                        pattern,
                                        entry.getValue()
                                                .getMethodAnnotation(Needs.class)
                                                .value()))));
    }

    static Stream<Arguments> routesAndRoles() {
        return routes().flatMap(route -> ROLES.keySet().stream().map(role -> arguments(route, role)));
    }

    @ParameterizedTest
    @MethodSource("routesAndRoles")
    void aRoleIsLetInWhereTheTableSaysSo(Route route, Role role) {
        Answer answer = route.triedBy(route.toString().equals(SIGN_IN) ? SHOP.withPassword(role) : SHOP.as(role));

        if (route.act().allowedTo(Set.of(ROLES.get(role)))) {
            assertThat(answer.status())
                    .as("%s by %s: %s", route, role, answer)
                    .isNotIn(401, 403)
                    .isLessThan(500);
        } else {
            answer.isProblem(403, "forbidden");
        }
        isDescribed(route, answer);
    }

    @ParameterizedTest
    @MethodSource("routes")
    void nobodyIsLetInUnasked(Route route) {
        Answer answer = route.triedBy(SHOP.anonymous());

        answer.isProblem(401, "unauthenticated");
        isDescribed(route, answer);
    }

    /** A token opens no route to a new token, and a password opens no other route. */
    @ParameterizedTest
    @MethodSource("routes")
    void nobodyIsLetInWithTheOtherKey(Route route) {
        Api other = route.toString().equals(SIGN_IN) ? SHOP.as(Role.MANAGER) : SHOP.withPassword(Role.MANAGER);

        route.triedBy(other).isProblem(401, "unauthenticated");
    }

    @Test
    void theRoutesAreThoseOfTheDescription() {
        Stream<String> described = DESCRIPTION.path("paths").properties().stream()
                .flatMap(path -> path.getValue().propertyNames().stream()
                        .map(method -> method.toUpperCase(Locale.ROOT) + " " + path.getKey()));

        assertThat(routes().map(Route::toString))
                .hasSizeGreaterThan(30)
                .containsExactlyInAnyOrderElementsOf(described.toList());
    }

    private static void isDescribed(Route route, Answer answer) {
        JsonNode responses = DESCRIPTION
                .path("paths")
                .path(route.pattern())
                .path(route.method().name().toLowerCase(Locale.ROOT))
                .path("responses");

        assertThat(responses.propertyNames()).as("%s", answer).contains(Integer.toString(answer.status()));
    }
}
