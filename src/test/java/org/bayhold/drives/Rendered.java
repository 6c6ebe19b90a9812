package org.bayhold.drives;

import java.util.Locale;
import java.util.Map;
import org.springframework.context.support.ResourceBundleMessageSource;
import org.springframework.context.support.StaticApplicationContext;
import org.springframework.core.convert.support.DefaultConversionService;
import org.thymeleaf.context.Context;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.spring6.expression.ThymeleafEvaluationContext;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;
import org.thymeleaf.templateresolver.StringTemplateResolver;

/** Fragments of pages as HTML, without a server. */
final class Rendered {
    private static final ResourceBundleMessageSource MESSAGES = messages();

    private final SpringTemplateEngine engine = new SpringTemplateEngine();
    private final StaticApplicationContext beans = new StaticApplicationContext();

    /** What the templates here ask of {@code web.Ui}. */
    public static final class Labels {
        public String label(String kind, Object code) {
            return MESSAGES.getMessage(kind + "." + code, null, Locale.ENGLISH);
        }
    }

    Rendered() {
        ClassLoaderTemplateResolver files = new ClassLoaderTemplateResolver();
        files.setPrefix("templates/");
        files.setSuffix(".html");
        files.setCharacterEncoding("UTF-8");
        files.setCheckExistence(true);
        files.setOrder(1);
        StringTemplateResolver text = new StringTemplateResolver();
        text.setTemplateMode(TemplateMode.HTML);
        text.setOrder(2);
        engine.addTemplateResolver(files);
        engine.addTemplateResolver(text);
        engine.setTemplateEngineMessageSource(MESSAGES);
        beans.registerBean("ui", Labels.class, Labels::new);
        beans.refresh();
    }

    static ResourceBundleMessageSource messages() {
        ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
        messages.setBasename("messages");
        messages.setDefaultEncoding("UTF-8");
        return messages;
    }

    String of(String template, Map<String, Object> variables) {
        Context context = new Context(Locale.ENGLISH, variables);
        context.setVariable(
                ThymeleafEvaluationContext.THYMELEAF_EVALUATION_CONTEXT_CONTEXT_VARIABLE_NAME,
                new ThymeleafEvaluationContext(beans, new DefaultConversionService()));
        return engine.process(template, context);
    }
}
