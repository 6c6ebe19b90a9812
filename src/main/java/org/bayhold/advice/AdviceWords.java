package org.bayhold.advice;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Reasons and cautions in words. */
@Component
class AdviceWords {
    private final MessageSource messages;

    AdviceWords(MessageSource messages) {
        this.messages = messages;
    }

    List<String> all(List<Why> whys) {
        return whys.stream().map(this::sentence).toList();
    }

    private String sentence(Why why) {
        return message(why.key(), why.arguments().stream().map(this::shown).toArray());
    }

    String message(String key, Object... arguments) {
        return Objects.requireNonNull(messages.getMessage(key, arguments, Locale.ENGLISH));
    }

    String place(org.bayhold.catalog.Category category, @Nullable String position) {
        String label = message("category." + category.name());
        return position == null ? label : label + ", " + position;
    }

    /** What is proposed, in a line. */
    String change(AdviceBody.Change change) {
        String place = place(change.category(), change.position());
        return change.part() == null
                ? message("advice.change." + change.action().name(), place)
                : message("advice.change.part", place, change.part());
    }

    private Object shown(Object argument) {
        if (argument instanceof Place place) {
            return place(place.category(), place.position());
        }
        if (argument instanceof PartSpec part) {
            return part.name();
        }
        return argument instanceof Revision revision ? revision.name() + " " + revision.revision() : argument;
    }
}
