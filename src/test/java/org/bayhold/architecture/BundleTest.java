package org.bayhold.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.context.support.ResourceBundleMessageSource;

/** Every sentence that is asked for is in the bundle, every sentence of the bundle is asked for, and its quotes are right. */
class BundleTest {
    private static final Map<String, String> BUNDLE = read(Path.of("src/main/resources/messages.properties"));
    private static final SourceKeys SOURCES = SourceKeys.under(Path.of("src/main/java"));
    private static final List<KeyUse> USES = Stream.concat(
                    SOURCES.uses().stream(), TemplateKeys.under(Path.of("src/main/resources/templates")).stream())
            .toList();

    /** A sentence that differs by a number is read as if it only showed it. */
    private static final Pattern CHOICE = Pattern.compile("\\{(\\d),choice,[^{}]*(?:\\{\\d\\}[^{}]*)*\\}");

    @Test
    void everySentenceThatIsAskedForIsThere() {
        assertThat(USES.stream().filter(use -> !use.isPrefix() && !BUNDLE.containsKey(use.key())))
                .isEmpty();
        KeyFamilies.ALL.forEach((prefix, family) -> assertThat(BUNDLE.keySet())
                .containsAll(family.needed().stream().map(prefix::concat).toList()));
    }

    @Test
    void everyComputedKeyIsOfAFamilyThatIsCheckedHere() {
        assertThat(USES.stream().filter(use -> use.isPrefix() && !KeyFamilies.ALL.containsKey(use.key())))
                .isEmpty();
        assertThat(USES.stream().map(KeyUse::key)).as("the sources were read").contains("gate.reason.", "vin.");
    }

    @Test
    void everySentenceIsAskedFor() {
        Set<String> asked = USES.stream().map(KeyUse::key).collect(Collectors.toSet());
        asked.addAll(SOURCES.literals());
        KeyFamilies.ALL.forEach((prefix, family) -> family.possible().forEach(end -> asked.add(prefix + end)));

        assertThat(BUNDLE.keySet().stream().filter(key -> !asked.contains(key))).isEmpty();
    }

    /** Spring formats a sentence only where it has arguments; elsewhere braces and doubled quotes would be shown as they are. */
    @Test
    void aSentenceWithoutArgumentsIsWrittenAsItIsShown() {
        Set<String> formatted = USES.stream()
                .filter(use -> use.arguments() > 0)
                .map(KeyUse::key)
                .collect(Collectors.toSet());

        assertThat(BUNDLE.entrySet().stream()
                        .filter(sentence -> !formatted.contains(sentence.getKey()))
                        .filter(sentence -> formatted.stream()
                                .noneMatch(prefix -> prefix.endsWith(".")
                                        && sentence.getKey().startsWith(prefix)))
                        .filter(sentence -> sentence.getValue().matches(".*(''|\\{\\d).*")))
                .isEmpty();
    }

    @Test
    void aSentenceWithArgumentsShowsThemAllAndLosesNoQuote() {
        List<String> wrong = new ArrayList<>();
        for (KeyUse use : USES) {
            if (use.arguments() > 0 && BUNDLE.containsKey(use.key())) {
                String sentence = CHOICE.matcher(BUNDLE.get(use.key())).replaceAll("{$1}");
                String shown = new MessageFormat(sentence, Locale.ENGLISH).format(samples(use.arguments()));
                if (!shown.equals(byHand(sentence, use.arguments()))) {
                    wrong.add(use + " is shown as: " + shown);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** What a test of quotes is worth: the two traps, as Spring falls into them. */
    @Test
    void theTrapsAreReal() {
        ResourceBundleMessageSource spring = new ResourceBundleMessageSource();
        spring.setBasename("messages");
        spring.setDefaultEncoding("UTF-8");

        assertThat(spring.getMessage("certificate.gate", new Object[0], Locale.ENGLISH))
                .isEqualTo("The gate's decision");
        assertThat(spring.getMessage("time.in-future", samples(2), Locale.ENGLISH))
                .contains("server's")
                .contains("<1>");
        assertThat(new MessageFormat("the car's {0}", Locale.ENGLISH).format(samples(1)))
                .isEqualTo("the cars {0}");
    }

    @Test
    void theDescriptionOfTheApiLosesNoQuoteEither() {
        read(Path.of("src/main/resources/openapi.properties"))
                .forEach((key, sentence) -> assertThat(sentence.replace("''", ""))
                        .as("%s, of which each is formatted", key)
                        .doesNotContain("'"));
    }

    private static Object[] samples(int count) {
        return IntStream.range(0, count).mapToObj(i -> "<" + i + ">").toArray();
    }

    private static String byHand(String sentence, int arguments) {
        String shown =
                sentence.replace("''", "\u2019").replace("'", "a lost quote").replace('\u2019', '\'');
        for (int i = 0; i < arguments; i++) {
            shown = shown.contains("{" + i + "}")
                    ? shown.replace("{" + i + "}", "<" + i + ">")
                    : shown + "no {" + i + "}";
        }
        return shown;
    }

    private static Map<String, String> read(Path file) {
        Properties properties = new Properties();
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            properties.load(reader);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        Map<String, String> sentences = new TreeMap<>();
        properties.forEach((key, sentence) -> sentences.put(key.toString(), sentence.toString()));
        return sentences;
    }
}
