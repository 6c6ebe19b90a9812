package org.bayhold.web;

import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.responses.ApiResponses;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.identity.Role;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.method.HandlerMethod;

/** What is said of each route: its name, its module, who may, and the headers that go with its method. */
final class ApiOperations implements OperationCustomizer {
    static final String KEY = "Idempotency-Key";
    private static final String IF_MATCH = "If-Match";
    private static final int MOST_ON_A_PAGE = 200;

    private final ApiWords words;

    ApiOperations(ApiWords words) {
        this.words = words;
    }

    @Override
    public Operation customize(Operation operation, HandlerMethod handler) {
        String name = name(handler);
        operation.setOperationId(name);
        operation.setTags(List.of(module(handler)));
        operation.setSummary(words.of("operation." + name));
        operation.setDescription(whoMay(handler));
        Set<RequestMethod> methods = methods(handler);
        if (methods.contains(RequestMethod.POST)) {
            post(operation, handler);
        }
        if (methods.contains(RequestMethod.DELETE)) {
            rename(operation.getResponses(), "204");
        }
        parameters(operation);
        return operation;
    }

    /** {@code vehicleFind}: unlike a bare method name it does not change when another module gets a method of that name. */
    private static String name(HandlerMethod handler) {
        String of = handler.getBeanType().getSimpleName().replace("Controller", "");
        String method = handler.getMethod().getName();
        String lower = of.substring(0, 1).toLowerCase(Locale.ROOT) + of.substring(1);
        return lower.equals(method)
                ? lower
                : lower + method.substring(0, 1).toUpperCase(Locale.ROOT) + method.substring(1);
    }

    private static String module(HandlerMethod handler) {
        String name = handler.getBeanType().getPackageName();
        return name.substring(name.lastIndexOf('.') + 1);
    }

    private String whoMay(HandlerMethod handler) {
        Needs needs = handler.getMethodAnnotation(Needs.class);
        if (needs == null) {
            throw new IllegalStateException(handler + " does not say what it needs");
        }
        Act act = needs.value();
        String roles = Arrays.stream(Role.values())
                .filter(role -> act.allowedTo(Set.of(role)))
                .map(Role::name)
                .collect(Collectors.joining(", "));
        return words.of("who-may", act.name(), roles);
    }

    private void post(Operation operation, HandlerMethod handler) {
        boolean takesKey = Arrays.stream(handler.getMethodParameters())
                .anyMatch(parameter -> parameter.getParameterType() == Call.class);
        if (takesKey) {
            operation.addParametersItem(new Parameter()
                    .in("header")
                    .name(KEY)
                    .description(words.of("idempotency-key"))
                    .schema(new StringSchema().minLength(1).maxLength(255)));
        } else {
            operation.setSecurity(List.of(new SecurityRequirement().addList(ApiDescription.BASIC)));
        }
        boolean saysItself = !AnnotatedElementUtils.findMergedRepeatableAnnotations(
                        handler.getMethod(), ApiResponse.class)
                .isEmpty();
        if (!saysItself && handler.getReturnType().getParameterType() == ResponseEntity.class) {
            rename(operation.getResponses(), "201");
        }
        if (operation.getResponses().get("201") != null) {
            operation.getResponses().get("201").addHeaderObject("Location", header("location"));
        }
    }

    private static void rename(ApiResponses responses, String status) {
        var ok = responses.remove("200");
        if (ok != null) {
            responses.addApiResponse(status, ok.description(null));
        }
    }

    private void parameters(Operation operation) {
        for (Parameter parameter :
                operation.getParameters() == null ? List.<Parameter>of() : operation.getParameters()) {
            switch (parameter.getName()) {
                case IF_MATCH -> parameter.required(true).description(words.of("if-match"));
                case "effectiveAt", "knownAt", "q", "after" ->
                    parameter.description(words.of("parameter." + parameter.getName()));
                case "limit" ->
                    parameter
                            .description(words.of("parameter.limit"))
                            .schema(new IntegerSchema()
                                    .minimum(java.math.BigDecimal.ONE)
                                    .maximum(java.math.BigDecimal.valueOf(MOST_ON_A_PAGE)));
                default -> {}
            }
        }
    }

    private Header header(String key) {
        return new Header().description(words.of(key)).schema(new StringSchema());
    }

    private static Set<RequestMethod> methods(HandlerMethod handler) {
        RequestMapping mapping = AnnotatedElementUtils.findMergedAnnotation(handler.getMethod(), RequestMapping.class);
        return mapping == null ? Set.of() : Set.of(mapping.method());
    }
}
