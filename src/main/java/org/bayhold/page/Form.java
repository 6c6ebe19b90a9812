package org.bayhold.page;

import jakarta.validation.ConstraintViolation;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatusCode;
import org.springframework.web.servlet.FlashMap;
import org.springframework.web.servlet.ModelAndView;

/**
 * What somebody typed into a page. A refusal comes back to the field that it concerns, and everything typed is kept. Read a
 * field as what it is to be: a field that cannot be read is noted, and {@link #check} or the end of the reading refuses.
 * A handler takes it as a parameter; templates have it as {@code form}.
 */
public final class Form {
    private final Map<String, String[]> typed;
    private final Map<String, String> initial = new LinkedHashMap<>();
    private final Map<String, List<String>> errors = new LinkedHashMap<>();
    private final List<String> problems = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final Forms forms;
    private final FlashMap flash;

    Form(Map<String, String[]> typed, Forms forms, FlashMap flash) {
        this.typed = typed;
        this.forms = forms;
        this.flash = flash;
    }

    /** What a field shows before anybody typed. */
    public Form with(String field, @Nullable Object value) {
        if (value != null) {
            initial.put(field, String.valueOf(value));
        }
        return this;
    }

    /** What a field shows: as typed, or as it began. Used by templates. */
    public String value(String field) {
        String[] values = typed.get(field);
        return values == null || values.length == 0 ? initial.getOrDefault(field, "") : values[0];
    }

    /** Whether a field has this value among its values. Used by templates. */
    public boolean has(String field, Object value) {
        String text = value instanceof Enum<?> constant ? constant.name() : String.valueOf(value);
        String[] values = typed.get(field);
        return values == null
                ? text.equals(initial.get(field))
                : Arrays.asList(values).contains(text);
    }

    /** What is wrong with a field, in a sentence; null where nothing is. Used by templates. */
    public @Nullable String error(String field) {
        List<String> of = errors.get(field);
        return of == null ? null : String.join(" ", of);
    }

    /** What is wrong, by field. Used by templates. */
    public Map<String, List<String>> errors() {
        return errors;
    }

    /** What is wrong with the whole of it. Used by templates. */
    public List<String> problems() {
        return problems;
    }

    public boolean isRefused() {
        return !errors.isEmpty() || !problems.isEmpty();
    }

    /** How many of a repeated group of fields were typed: {@code part[0].category}, {@code part[1].category}, … */
    public int count(String group) {
        int count = 0;
        for (String name : typed.keySet()) {
            if (name.startsWith(group + "[") && name.indexOf(']') > 0) {
                String number = name.substring(group.length() + 1, name.indexOf(']'));
                count = number.matches("\\d{1,3}") ? Math.max(count, Integer.parseInt(number) + 1) : count;
            }
        }
        return count;
    }

    /** Without blanks around it; null where nothing was typed. */
    public @Nullable String text(String field) {
        String text = Text.strip(typedValue(field));
        if (text != null && !Text.isStorable(text)) {
            note(field, Refusal.invalid(field, "form.unstorable"));
            return null;
        }
        return text;
    }

    /** As {@link #text}; the empty text, and a refusal to come, where nothing was typed. */
    public String required(String field) {
        String text = text(field);
        if (text == null && error(field) == null) {
            note(field, Refusal.invalid(field, "form.required"));
        }
        return text == null ? "" : text;
    }

    /** Whether a field holds what nobody may see again: it is neither carried along nor remembered, not even as a hash. */
    public static boolean isSecret(String field) {
        return field.toLowerCase(Locale.ROOT).contains("password");
    }

    /** As typed, blanks and all; never shown again. */
    public String secret(String field) {
        return typedValue(field);
    }

    public @Nullable Integer integer(String field) {
        return read(field, "form.integer", TypedNumber::whole);
    }

    public @Nullable Double decimal(String field) {
        return read(field, "form.number", TypedNumber::decimal);
    }

    public @Nullable UUID id(String field) {
        return read(field, "form.choice", UUID::fromString);
    }

    public <E extends Enum<E>> @Nullable E choice(String field, Class<E> type) {
        return read(field, "form.choice", text -> Enum.valueOf(type, text));
    }

    /** Every value of a field of check boxes; what is no such choice is noted. */
    public <E extends Enum<E>> List<E> choices(String field, Class<E> type) {
        List<E> choices = new ArrayList<>();
        for (String value : typed.getOrDefault(field, new String[0])) {
            try {
                choices.add(Enum.valueOf(type, value));
            } catch (IllegalArgumentException e) {
                note(field, Refusal.invalid(field, "form.choice"));
            }
        }
        return choices;
    }

    public boolean checked(String field) {
        return text(field) != null;
    }

    /** A day; null where none was typed. What the field began with counts as typed. */
    public @Nullable LocalDate date(String field) {
        String text = value(field).strip();
        try {
            return text.isEmpty() ? null : LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            note(field, Refusal.invalid(field, "form.date"));
            return null;
        }
    }

    /** A time of the site; null, for now, where none was typed. One that the clocks showed twice is said to be the earlier. */
    public @Nullable Instant time(String field) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        try {
            SiteTime.Typed time = forms.time().parse(field, text);
            if (time.twice()) {
                notes.add(forms.sentence("form.time-twice", text.replace('T', ' ')));
            }
            return time.at();
        } catch (Refusal refusal) {
            note(field, refusal);
            return null;
        }
    }

    /** Refuses where a field could not be read, or the request breaks a rule of its own. */
    public void check(Object request) {
        check(request, field -> field);
    }

    /** @param names gives the page's name for a field of the request */
    public void check(Object request, UnaryOperator<String> names) {
        for (ConstraintViolation<Object> violation : forms.violations(request)) {
            String field = names.apply(violation.getPropertyPath().toString());
            if (!errors.containsKey(field)) {
                add(field, sentence(violation.getMessage()));
            }
        }
        check();
    }

    /** Refuses where a field could not be read. */
    public void check() {
        if (isRefused()) {
            throw new Refusal(Code.INVALID, List.of());
        }
    }

    public ModelAndView show(String view) {
        return new ModelAndView(view, "form", this);
    }

    /**
     * Does what the form is for. A refusal shows the form again with what was typed and what is wrong; refusals that no
     * typing mends (no such record, not one's role) go on to their own page.
     *
     * @param work reads the fields, checks, writes, and says where to go next
     */
    public ModelAndView submit(String view, Supplier<ModelAndView> work) {
        try {
            ModelAndView next = work.get();
            if (!isRefused()) {
                return next;
            }
            throw new IllegalStateException("a form was used without being checked: " + errors.keySet());
        } catch (Refusal refusal) {
            if (Set.of(Code.FORBIDDEN, Code.NOT_FOUND, Code.UNAUTHENTICATED).contains(refusal.code())) {
                throw refusal;
            }
            refused(refusal);
            ModelAndView again = show(view);
            again.setStatus(HttpStatusCode.valueOf(refusal.code().status()));
            return again;
        }
    }

    /** Goes to a page that then says what was done. */
    public ModelAndView done(String path, String key, Object... arguments) {
        notes.add(0, forms.sentence(key, arguments));
        flash.put("said", List.copyOf(notes));
        return new ModelAndView("redirect:" + path);
    }

    /** Whether an answer leads on to another page, which shows itself what it needs. */
    public static boolean leadsOn(ModelAndView page) {
        return String.valueOf(page.getViewName()).startsWith("redirect:");
    }

    /** A further sentence for the page that follows. */
    public void say(String key, Object... arguments) {
        notes.add(forms.sentence(key, arguments));
    }

    /** Puts what a refusal says to the fields that it concerns. */
    public void refused(Refusal refusal) {
        for (Refusal.Reason reason : refusal.reasons()) {
            String sentence = forms.sentence(reason.key(), reason.arguments().toArray());
            if (reason.field() == null) {
                problems.add(sentence);
            } else {
                add(reason.field(), sentence);
            }
        }
    }

    private <T> @Nullable T read(String field, String wrong, java.util.function.Function<String, T> reader) {
        String text = text(field);
        if (text == null) {
            return null;
        }
        try {
            return reader.apply(text);
        } catch (IllegalArgumentException e) {
            note(field, Refusal.invalid(field, wrong));
            return null;
        }
    }

    private void note(String field, Refusal refusal) {
        if (!errors.containsKey(field)) {
            refused(refusal);
        }
    }

    private void add(String field, String sentence) {
        errors.computeIfAbsent(field, key -> new ArrayList<>()).add(sentence);
    }

    private String typedValue(String field) {
        String[] values = typed.get(field);
        return values == null || values.length == 0 ? "" : values[0];
    }

    private static String sentence(String message) {
        return message.isEmpty()
                ? message
                : message.substring(0, 1).toUpperCase(Locale.ENGLISH) + message.substring(1) + ".";
    }
}
