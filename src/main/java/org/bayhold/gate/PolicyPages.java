package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.identity.People;
import org.bayhold.page.Form;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Policy</i>: what the shop asks for before a car leaves, what each of it means, and who set what when. */
@Controller
class PolicyPages {
    private static final String VIEW = "gate/policy";

    private final PolicyBook book;
    private final Catalog catalog;
    private final People people;
    private final Clock clock;

    PolicyPages(PolicyBook book, Catalog catalog, People people, Clock clock) {
        this.book = book;
        this.catalog = catalog;
        this.people = people;
        this.clock = clock;
    }

    /** What may be asked for or not. */
    enum Asked {
        YES,
        NO;

        static Asked of(boolean asked) {
            return asked ? YES : NO;
        }
    }

    /** A version of the policy. */
    record Version(Instant at, String by, Policy policy) {}

    @Needs(Act.READ)
    @GetMapping("/policy")
    ModelAndView policy(Form form) {
        Policy now = now();
        asked(now).forEach((field, yes) -> form.with(field, Asked.of(yes)));
        form.with("readBackMaxAgeHours", now.readBackMaxAgeHours()).with("seen", newest());
        return show(form.show(VIEW));
    }

    @Needs(Act.SET_POLICY)
    @PostMapping("/policy")
    ModelAndView set(Call call, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            PolicyRequest request = new PolicyRequest(
                    yes(form, "readBackRequired"),
                    form.integer("readBackMaxAgeHours"),
                    yes(form, "troubleCodesChecked"),
                    null,
                    yes(form, "acknowledgementRequired"),
                    yes(form, "secondPersonRequired"));
            form.check(request);
            if (!form.value("seen").equals(newest())) {
                throw Refusal.of(Code.STALE, "policy.stale");
            }
            book.set(call, request);
            return form.done("/policy", "said.policy-set");
        });
        return Form.leadsOn(page) ? page : show(page);
    }

    private static @Nullable Boolean yes(Form form, String field) {
        Asked asked = form.choice(field, Asked.class);
        return asked == null ? null : asked == Asked.YES;
    }

    /** In the order in which the gate asks. */
    private static Map<String, Boolean> asked(Policy policy) {
        Map<String, Boolean> asked = new LinkedHashMap<>();
        asked.put("readBackRequired", policy.readBackRequired());
        asked.put("troubleCodesChecked", policy.troubleCodesChecked());
        asked.put("acknowledgementRequired", policy.acknowledgementRequired());
        asked.put("secondPersonRequired", policy.secondPersonRequired());
        return asked;
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

    private ModelAndView show(ModelAndView page) {
        List<PolicyBook.Version> versions = book.versions();
        Map<UUID, String> names =
                people.names(versions.stream().map(PolicyBook.Version::by).toList());
        return page.addObject("asked", asked(now()))
                .addObject("usual", asked(Policy.DEFAULT))
                .addObject("usualHours", Policy.DEFAULT.readBackMaxAgeHours())
                .addObject("choices", Asked.values())
                .addObject("unfelt", unfelt())
                .addObject(
                        "versions",
                        versions.stream()
                                .map(version -> new Version(
                                        version.at(),
                                        names.getOrDefault(
                                                version.by(), version.by().toString()),
                                        version.policy()))
                                .toList());
    }

    /** The categories that a manager moved, and those that were born without an effect. */
    private List<Category> unfelt() {
        Instant now = clock.instant();
        EffectGroups groups = catalog.effectGroups();
        return java.util.Arrays.stream(Category.values())
                .filter(category -> groups.of(category, now, now) == EffectGroup.NO_EFFECT)
                .toList();
    }
}
