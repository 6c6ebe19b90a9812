package org.bayhold.architecture;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The keys of sentences in templates: written out, or a prefix that is written out and a rest that is computed. */
final class TemplateKeys {
    private static final Pattern ANY = Pattern.compile("#\\{(?<what>.*)");
    private static final Pattern WRITTEN_OUT =
            Pattern.compile("(?<key>[a-z][\\w.-]*)(\\((?<arguments>(\\$\\{[^}]*\\}|[^})])*)\\))?\\}.*");
    private static final Pattern COMPUTED = Pattern.compile("\\$\\{'(?<prefix>[a-z][\\w.-]*\\.)' \\+ [^}]*\\}.*");

    /** A sentence that the page's own code chose: its key is a text of the sources. */
    private static final Pattern CHOSEN = Pattern.compile(
            "\\$\\{(step\\.sentence|step\\.page|row\\.next\\.sentence|field\\.label|row\\.key|note|refused)\\}\\}.*");

    /** The label of a constant, by its kind. */
    private static final Pattern LABEL = Pattern.compile("@ui\\.label\\('(?<kind>[\\w.-]+)', ");

    /** The same, through the fragments that show constants to choose from. */
    private static final Pattern CHOICE =
            Pattern.compile("(?:choice|picks)\\(.*?'(?<kind>[a-z][\\w.-]*)', \\$\\{\\w+\\}");

    private TemplateKeys() {}

    static List<KeyUse> under(Path folder) {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(path -> path.toString().endsWith(".html"))
                    .flatMap(path -> of(path).stream())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<KeyUse> of(Path template) {
        List<KeyUse> uses = new ArrayList<>();
        try {
            List<String> lines = Files.readAllLines(template);
            for (int i = 0; i < lines.size(); i++) {
                String where = template.getFileName() + ":" + (i + 1);
                String rest = lines.get(i);
                for (Pattern kinds : List.of(LABEL, CHOICE)) {
                    kinds.matcher(rest).results().forEach(kind -> uses.add(new KeyUse(kind.group(1) + ".", 0, where)));
                }
                for (Matcher any = ANY.matcher(rest); any.find(); any = ANY.matcher(rest)) {
                    rest = any.group("what");
                    if (!CHOSEN.matcher(rest).matches()) {
                        uses.add(use(rest, where));
                    }
                }
            }
            return uses;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Arguments are counted, not what they are computed from. */
    private static int count(String arguments) {
        int depth = 0;
        int count = 1;
        for (char c : arguments.toCharArray()) {
            depth += c == '(' || c == '{' ? 1 : c == ')' || c == '}' ? -1 : 0;
            count += c == ',' && depth == 0 ? 1 : 0;
        }
        return count;
    }

    private static KeyUse use(String text, String where) {
        Matcher written = WRITTEN_OUT.matcher(text);
        if (written.matches()) {
            String arguments = written.group("arguments");
            int count = arguments == null ? 0 : count(arguments);
            return new KeyUse(written.group("key"), count, where);
        }
        Matcher computed = COMPUTED.matcher(text);
        if (computed.matches()) {
            return new KeyUse(computed.group("prefix"), 0, where);
        }
        throw new AssertionError("no key can be read at " + where + ": #{" + text);
    }
}
