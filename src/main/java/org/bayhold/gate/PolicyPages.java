package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.identity.People;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.page.Form;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Policy</i>: what the shop asks for before a car leaves, what each of it means, and who changed what when. */
@Controller
class PolicyPages {
    private static final String VIEW = "gate/policy";

    private final PolicyBook book;
    private final PolicyForm fields;
    private final Catalog catalog;
    private final People people;
    private final CanonicalJson json;
    private final Clock clock;
    private final MessageSource messages;

    PolicyPages(
            PolicyBook book,
            PolicyForm fields,
            Catalog catalog,
            People people,
            CanonicalJson json,
            Clock clock,
            MessageSource messages) {
        this.book = book;
        this.fields = fields;
        this.catalog = catalog;
        this.people = people;
        this.json = json;
        this.clock = clock;
        this.messages = messages;
    }

    /** A version of the policy. */
    record Version(Instant at, String by, List<PolicyChange> changes) {}

    /** With {@code driveLog=defaults} the fields show the defaults, for whoever reads them to set. */
    @Needs(Act.READ)
    @GetMapping("/policy")
    ModelAndView policy(Form form) {
        Policy now = now();
        boolean filledIn = form.value("driveLog").equals("defaults");
        Thresholds thresholds = filledIn ? Thresholds.DEFAULTS : now.thresholds();
        fields.fill(form, now, thresholds);
        form.with("seen", newest());
        return show(form.show(VIEW), thresholds).addObject("filledIn", filledIn).addObject("unfolded", filledIn);
    }

    @Needs(Act.SET_POLICY)
    @PostMapping("/policy")
    ModelAndView set(Call call, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            PolicyRequest request = fields.read(form);
            form.check(request);
            if (!form.value("seen").equals(newest())) {
                throw Refusal.of(Code.STALE, "policy.stale");
            }
            book.set(call, request);
            return form.done("/policy", "said.policy-set");
        });
        return Form.leadsOn(page)
                ? page
                : show(page, now().thresholds()).addObject("unfolded", PolicyForm.isWrongAmongThresholds(form));
    }

    private String by(PolicyBook.Version version, Map<UUID, String> names) {
        return version.by().equals(NewShop.ITSELF)
                ? messages.getMessage("policy.by-itself", null, Locale.ENGLISH)
                : names.getOrDefault(version.by(), version.by().toString());
    }

    /** Which version a page was made from; empty before the first. */
    private String newest() {
        return book.versions().stream()
                .findFirst()
                .map(version -> version.at().toString())
                .orElse("");
    }

    private Policy now() {
        Instant now = clock.instant().plusSeconds(60);
        return book.policies().at(now, now);
    }

    private ModelAndView show(ModelAndView page, Thresholds thresholds) {
        Policy now = now();
        return page.addObject("asked", PolicyForm.asked(now))
                .addObject("usual", PolicyForm.asked(Policy.USUAL))
                .addObject("hours", now.readBackMaxAgeHours())
                .addObject("usualHours", Policy.USUAL.readBackMaxAgeHours())
                .addObject("choices", Asked.values())
                .addObject("thresholds", lines(thresholds))
                .addObject(
                        "unusual",
                        ThresholdLine.of(ThresholdGroup.ALL.attributes(), now.thresholds(), Thresholds.DEFAULTS, json)
                                .stream()
                                .filter(ThresholdLine::differs)
                                .count())
                .addObject("unfelt", unfelt())
                .addObject("versions", versions());
    }

    /** Beside the defaults. */
    private Map<ThresholdGroup, List<ThresholdLine>> lines(Thresholds thresholds) {
        Map<ThresholdGroup, List<ThresholdLine>> lines = new EnumMap<>(ThresholdGroup.class);
        for (ThresholdGroup group : ThresholdGroup.values()) {
            lines.put(group, ThresholdLine.of(group.thresholds(), thresholds, Thresholds.DEFAULTS, json));
        }
        return lines;
    }

    /** Each with what it changed of the one before, the newest first. */
    private List<Version> versions() {
        List<PolicyBook.Version> all = book.versions();
        Map<UUID, String> names =
                people.names(all.stream().map(PolicyBook.Version::by).toList());
        List<Version> versions = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            PolicyBook.Version version = all.get(i);
            Policy before = i + 1 < all.size() ? all.get(i + 1).policy() : Policy.DEFAULT;
            versions.add(new Version(
                    version.at(), by(version, names), PolicyChange.between(before, version.policy(), json)));
        }
        return versions;
    }

    /** The categories that a manager moved, and those that were born without an effect. */
    private List<Category> unfelt() {
        Instant now = clock.instant();
        EffectGroups groups = catalog.effectGroups();
        return Arrays.stream(Category.values())
                .filter(category -> groups.of(category, now, now) == EffectGroup.NO_EFFECT)
                .toList();
    }
}
