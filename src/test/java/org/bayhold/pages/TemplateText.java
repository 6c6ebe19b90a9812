package org.bayhold.pages;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.attoparser.AbstractMarkupHandler;
import org.attoparser.MarkupParser;
import org.attoparser.ParseException;
import org.attoparser.config.ParseConfiguration;
import org.attoparser.simple.AbstractSimpleMarkupHandler;
import org.attoparser.simple.SimplifierMarkupHandler;
import org.jspecify.annotations.Nullable;

/** Reads one template as text and tells what in it breaks the rules that every page keeps. */
final class TemplateText extends AbstractSimpleMarkupHandler {
    private static final Set<String> READ_ALOUD = Set.of("alt", "title", "placeholder", "aria-label", "label");
    /** A second sign-in or sign-out does no harm; a resumed form carries its own _once among what it kept. */
    private static final Set<String> RECORDS_NOTHING = Set.of("/sign-in", "/sign-out", "@{''}", "${to}");

    private static final Set<String> FIELDS = Set.of("input", "select", "textarea");
    private static final Set<String> NEEDS_NO_LABEL = Set.of("hidden", "submit", "button");
    private static final Set<String> VOID =
            Set.of("input", "meta", "link", "br", "hr", "img", "path", "circle", "rect", "line", "use", "col", "wbr");
    private static final Pattern EXPRESSION = Pattern.compile("[$#@~*]\\{(?:[^{}]|\\{[^{}]*})*}");
    private static final Pattern INLINED = Pattern.compile("\\[\\[.*?]]", Pattern.DOTALL);
    private static final Pattern KEY = Pattern.compile("#\\{([A-Za-z0-9_.-]+)[}(]");
    private static final Pattern LETTER = Pattern.compile("\\p{L}");

    private final Properties bundle;
    private final List<String> findings = new ArrayList<>();
    private final Deque<String> open = new ArrayDeque<>();
    private final Set<String> labelled = new HashSet<>();
    private final List<Field> fields = new ArrayList<>();
    private int heading;
    private @Nullable Form form;

    private record Field(int line, String id) {}

    private static final class Form {
        final int line;
        final boolean posts;
        boolean once;

        Form(int line, boolean posts) {
            this.line = line;
            this.posts = posts;
        }
    }

    private TemplateText(Properties bundle) {
        this.bundle = bundle;
    }

    static List<String> findingsIn(String template, Properties bundle) {
        TemplateText text = new TemplateText(bundle);
        AbstractMarkupHandler handler = new SimplifierMarkupHandler(text);
        try {
            new MarkupParser(ParseConfiguration.htmlConfiguration()).parse(template, handler);
        } catch (ParseException e) {
            throw new IllegalArgumentException(e);
        }
        text.fields.stream()
                .filter(field -> !text.labelled.contains(field.id()))
                .forEach(field -> text.report(field.line(), "a field without a label: " + field.id()));
        return text.findings;
    }

    private void report(int line, String finding) {
        findings.add("line " + line + ": " + finding);
    }

    @Override
    public void handleText(char[] buffer, int offset, int length, int line, int column) {
        String text = new String(buffer, offset, length);
        expression(text, line);
        String literal = INLINED.matcher(text).replaceAll("");
        if (LETTER.matcher(literal.replaceAll("&[a-z]+;", "")).find()) {
            report(line, "text that does not come from the bundle: " + literal.strip());
        }
    }

    @Override
    public void handleStandaloneElement(
            String name, Map<String, String> attributes, boolean minimized, int line, int column) {
        element(name, attributes == null ? Map.of() : attributes, line);
    }

    @Override
    public void handleOpenElement(String name, Map<String, String> attributes, int line, int column) {
        element(name, attributes == null ? Map.of() : attributes, line);
        if (!VOID.contains(name)) {
            open.push(name);
        }
    }

    @Override
    public void handleAutoOpenElement(String name, Map<String, String> attributes, int line, int column) {
        handleOpenElement(name, attributes, line, column);
    }

    @Override
    public void handleCloseElement(String name, int line, int column) {
        open.removeFirstOccurrence(name);
        if (name.equals("form") && form != null) {
            if (form.posts && !form.once) {
                report(form.line, "a form that posts without _once");
            }
            form = null;
        }
    }

    @Override
    public void handleAutoCloseElement(String name, int line, int column) {
        handleCloseElement(name, line, column);
    }

    private void element(String name, Map<String, String> attributes, int line) {
        attributes.forEach((attribute, value) -> attribute(name, attribute, value == null ? "" : value, line));
        switch (name) {
            case "style" -> report(line, "an inline style sheet");
            case "script" -> {
                if (!attributes.containsKey("th:src") && !attributes.containsKey("src")) {
                    report(line, "an inline script");
                }
            }
            case "form" -> form(attributes, line);
            case "label" -> {
                labelled.add(attributes.getOrDefault("for", ""));
                labelled.add(attributes.getOrDefault("th:for", ""));
            }
            case "h1", "h2", "h3", "h4", "h5", "h6" -> heading(name.charAt(1) - '0', line);
            default -> {}
        }
        if (FIELDS.contains(name)) {
            field(attributes, line);
        }
        if (form != null && attributes.values().stream().anyMatch(value -> value != null && value.contains("once"))) {
            form.once = true;
        }
    }

    private void attribute(String element, String attribute, String value, int line) {
        String name = attribute.toLowerCase(Locale.ROOT);
        expression(value, line);
        if (name.equals("style") || name.equals("th:style") || name.equals("th:styleappend")) {
            report(line, "an inline style");
        } else if (name.startsWith("on") || name.startsWith("th:on") || name.startsWith("hx-on")) {
            report(line, "an inline script: " + name);
        } else if (name.equals("th:utext") || name.equals("th:inline") && value.equals("javascript")) {
            report(line, "markup or script from a value: " + name);
        } else if (READ_ALOUD.contains(name) && LETTER.matcher(value).find()) {
            report(line, name + " does not come from the bundle: " + value);
        } else if (isRead(name) && hasLiteral(value)) {
            report(line, name + " holds text that does not come from the bundle: " + value);
        } else if (element.equals("form") && name.equals("action")) {
            report(line, "a form whose address is no th:action");
        }
    }

    private static boolean isRead(String name) {
        return name.equals("th:text") || (name.startsWith("th:") && READ_ALOUD.contains(name.substring(3)));
    }

    /** A quoted piece with letters outside of every expression. */
    private static boolean hasLiteral(String value) {
        Matcher quoted =
                Pattern.compile("'([^']*)'").matcher(EXPRESSION.matcher(value).replaceAll("x"));
        while (quoted.find()) {
            if (LETTER.matcher(quoted.group(1)).find()) {
                return true;
            }
        }
        return false;
    }

    private void expression(String value, int line) {
        Matcher key = KEY.matcher(value);
        while (key.find()) {
            if (bundle.getProperty(key.group(1)) == null) {
                report(line, "the bundle has no " + key.group(1));
            }
        }
    }

    private void form(Map<String, String> attributes, int line) {
        String method = attributes.getOrDefault("method", attributes.getOrDefault("th:method", "get"));
        boolean posts = method.equalsIgnoreCase("post");
        String action = attributes.getOrDefault("th:action", "");
        form = new Form(line, posts);
        form.once = RECORDS_NOTHING.stream().anyMatch(action::contains);
        if (posts && !attributes.containsKey("th:action")) {
            report(line, "a form that posts without th:action, so without a CSRF token");
        }
    }

    private void field(Map<String, String> attributes, int line) {
        if (NEEDS_NO_LABEL.contains(attributes.getOrDefault("type", ""))
                || attributes.containsKey("th:replace")
                || attributes.containsKey("th:aria-label")
                || attributes.containsKey("aria-labelledby")
                || attributes.containsKey("th:aria-labelledby")
                || open.contains("label")) {
            return;
        }
        fields.add(new Field(line, attributes.getOrDefault("th:id", attributes.getOrDefault("id", "(no id)"))));
    }

    private void heading(int level, int line) {
        if (heading != 0 && level > heading + 1) {
            report(line, "h" + level + " follows h" + heading);
        }
        heading = level;
    }
}
