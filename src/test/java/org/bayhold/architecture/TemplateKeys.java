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
                for (Matcher any = ANY.matcher(rest); any.find(); any = ANY.matcher(rest)) {
                    rest = any.group("what");
                    uses.add(use(rest, where));
                }
            }
            return uses;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static KeyUse use(String text, String where) {
        Matcher written = WRITTEN_OUT.matcher(text);
        if (written.matches()) {
            String arguments = written.group("arguments");
            int count = arguments == null ? 0 : arguments.split(",", -1).length;
            return new KeyUse(written.group("key"), count, where);
        }
        Matcher computed = COMPUTED.matcher(text);
        if (computed.matches()) {
            return new KeyUse(computed.group("prefix"), 0, where);
        }
        throw new AssertionError("no key can be read at " + where + ": #{" + text);
    }
}
