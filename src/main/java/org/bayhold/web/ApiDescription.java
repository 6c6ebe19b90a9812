package org.bayhold.web;

import io.swagger.v3.core.jackson.ModelResolver;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.security.SecurityScheme;
import io.swagger.v3.oas.models.servers.Server;
import io.swagger.v3.oas.models.tags.Tag;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * The description of the API at {@code /v3/api-docs}. Routes, fields and limits come from the code itself; what is said of
 * every route alike is said here once, and the sentences are in {@code openapi.properties}.
 */
@Configuration(proxyBeanMethods = false)
class ApiDescription {
    static final String BEARER = "bearer";
    static final String BASIC = "basic";

    private static final ApiWords WORDS = new ApiWords();

    ApiDescription() {
        SpringDocUtils.getConfig().addRequestWrapperToIgnore(Caller.class, Call.class);
    }

    @Bean
    static OpenAPI bayholdApi() {
        Info info = new Info()
                .title("Bayhold")
                .version("v1")
                .description(WORDS.of("description"))
                .license(new License().name("Apache-2.0").identifier("Apache-2.0"));
        SecurityScheme bearer = new SecurityScheme()
                .type(SecurityScheme.Type.HTTP)
                .scheme(BEARER)
                .description(WORDS.of("security.bearer"));
        SecurityScheme basic = new SecurityScheme()
                .type(SecurityScheme.Type.HTTP)
                .scheme(BASIC)
                .description(WORDS.of("security.basic"));
        return new OpenAPI()
                .info(info)
                // where it is served from: otherwise the address that the first reader happened to use
                .addServersItem(new Server().url("/"))
                .components(new Components().addSecuritySchemes(BEARER, bearer).addSecuritySchemes(BASIC, basic));
    }

    @Bean
    static ApiModels apiModels() {
        ModelResolver.enumsAsRef = true; // the library has no other way to say it
        return new ApiModels();
    }

    @Bean
    static ApiOperations apiOperations() {
        return new ApiOperations(WORDS);
    }

    @Bean
    static ApiProblems apiProblems(MessageSource messages) {
        return new ApiProblems(messages);
    }

    @Bean
    static OpenApiCustomizer apiAttributes(MessageSource messages) {
        return new ApiAttributes(messages);
    }

    /** The modules that have routes, in an order that depends on nothing but their names. */
    @Bean
    static OpenApiCustomizer modules() {
        return api -> {
            api.setTags(api.getPaths().values().stream()
                    .flatMap(item -> item.readOperations().stream())
                    .flatMap(operation -> operation.getTags().stream())
                    .distinct()
                    .sorted()
                    .map(tag -> new Tag().name(tag).description(WORDS.of("module." + tag)))
                    .toList());
        };
    }
}
