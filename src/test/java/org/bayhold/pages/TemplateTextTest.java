package org.bayhold.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/** What every template keeps to, read off its text. */
class TemplateTextTest {
    private static final Properties BUNDLE = bundle();

    private static Properties bundle() {
        Properties bundle = new Properties();
        try (InputStream in = TemplateTextTest.class.getResourceAsStream("/messages.properties")) {
            bundle.load(in);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return bundle;
    }

    static Stream<Resource> templates() throws IOException {
        return Arrays.stream(new PathMatchingResourcePatternResolver().getResources("classpath*:/templates/**/*.html"));
    }

    @Test
    void thereAreTemplates() throws IOException {
        assertThat(templates()).isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("templates")
    void aTemplateKeepsTheRules(Resource template) throws IOException {
        String text = template.getContentAsString(StandardCharsets.UTF_8);

        assertThat(TemplateText.findingsIn(text, BUNDLE))
                .as(template.getDescription())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "<p>Words</p> | text that does not come from the bundle",
                "<p th:text=\"'Some words'\"></p> | holds text that does not come from the bundle",
                "<p th:text=\"${a} + ' words'\"></p> | holds text that does not come from the bundle",
                "<p th:text=\"#{no.such.key}\"></p> | the bundle has no no.such.key",
                "<img alt=\"A car\"> | alt does not come from the bundle",
                "<form method=\"post\" action=\"/cars\"><input type=\"hidden\" name=\"_once\"></form> | without a CSRF token",
                "<form method=\"post\" th:action=\"@{/cars}\"></form> | without _once",
                "<input id=\"vin\"> | a field without a label",
                "<label for=\"vin\"></label><input id=\"plate\"> | a field without a label",
                "<textarea></textarea> | a field without a label",
                "<script>go()</script> | an inline script",
                "<style>p { color: red }</style> | an inline style sheet",
                "<p style=\"color: red\"></p> | an inline style",
                "<p onclick=\"go()\"></p> | an inline script",
                "<p hx-on:click=\"go()\"></p> | an inline script",
                "<p th:utext=\"${a}\"></p> | markup or script from a value",
                "<h1></h1><h3></h3> | h3 follows h1"
            })
    void aTemplateThatBreaksARuleIsFound(String template, String finding) {
        assertThat(TemplateText.findingsIn(template, BUNDLE)).anyMatch(found -> found.contains(finding));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "<p th:text=\"#{risk.HIGH}\"></p>",
                "<p>[[${a}]], [[#{risk.HIGH}]]</p>",
                "<p th:text=\"${a == 'words' ? b : c} + ', ' + ${d}\"></p>",
                "<label><span></span><input id=\"vin\"></label>",
                "<label for=\"vin\"></label><input id=\"vin\">",
                "<input type=\"hidden\" name=\"x\">",
                "<form method=\"post\" th:action=\"@{/cars}\"><input type=\"hidden\" name=\"_once\"></form>",
                "<script th:src=\"@{/js/one.js}\"></script>",
                "<h1></h1><h2></h2><h3></h3><h2></h2>"
            })
    void aTemplateThatKeepsTheRulesIsNot(String template) {
        assertThat(TemplateText.findingsIn(template, BUNDLE)).isEmpty();
    }
}
