package org.bayhold.advice;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A letter to a customer: what was asked, what the shop says, why, what it takes.
 *
 * @param from the workshop, who answered, and when
 * @param about the car and what would be changed
 * @param asked what was asked; null where nobody wrote it down
 * @param answer in a sentence
 */
record Letter(
        String title,
        String from,
        List<String> about,
        @Nullable String asked,
        String answer,
        List<Section> sections,
        String closing) {
    Letter {
        about = List.copyOf(about);
        sections = List.copyOf(sections);
    }

    /** Sentences under a heading. */
    record Section(String heading, List<String> sentences) {
        Section {
            sentences = List.copyOf(sentences);
        }
    }

    /** As plain text, a sentence a line. */
    String text() {
        StringBuilder text = new StringBuilder(title + "\n" + from + "\n\n" + String.join("\n", about) + "\n\n");
        if (asked != null) {
            text.append(asked).append("\n\n");
        }
        text.append(answer).append("\n\n");
        for (Section section : sections) {
            text.append(section.heading()).append('\n');
            text.append(section.sentences().stream().map(line -> "- " + line).collect(Collectors.joining("\n")));
            text.append("\n\n");
        }
        return text.append(closing).append('\n').toString();
    }
}
