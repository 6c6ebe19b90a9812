package org.bayhold.web;

import java.time.Clock;
import java.util.List;
import org.bayhold.page.Forms;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import tools.jackson.databind.JacksonModule;
import tools.jackson.databind.module.SimpleModule;

/** What every request passes through. */
@Configuration(proxyBeanMethods = false)
class WebSetup implements WebMvcConfigurer {
    private final Forms forms;

    WebSetup(Forms forms) {
        this.forms = forms;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new NeedsInterceptor());
    }

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(new CallResolver());
        resolvers.add(new FormResolver(forms));
    }

    /** The only clock: tests set another. */
    @Bean
    static Clock clock() {
        return Clock.systemUTC();
    }

    /** How strictly JSON is read stands in application.yml; what text may hold stands in {@link StorableText}. */
    @Bean
    static JacksonModule storableText() {
        return new SimpleModule("storable-text").addDeserializer(String.class, new StorableText());
    }
}
