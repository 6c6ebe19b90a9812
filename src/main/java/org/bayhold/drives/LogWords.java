package org.bayhold.drives;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.bayhold.drivelog.Parameter;
import org.bayhold.prediction.Sentence;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** What a judgement says, in words. */
@Component
public class LogWords {
    private static final Set<String> PARAMETERS =
            Arrays.stream(Parameter.values()).map(Enum::name).collect(Collectors.toUnmodifiableSet());

    private final MessageSource messages;

    LogWords(MessageSource messages) {
        this.messages = messages;
    }

    /** A parameter that a sentence names is shown by its label, one that was stored too. */
    public String sentence(Sentence sentence) {
        Object[] shown = sentence.arguments().stream()
                .map(argument -> PARAMETERS.contains(String.valueOf(argument))
                        ? message("drivelog.parameter." + argument)
                        : argument)
                .toArray();
        return messages.getMessage(sentence.key(), shown, Locale.ENGLISH);
    }

    private String message(String key) {
        return messages.getMessage(key, null, Locale.ENGLISH);
    }
}
