package org.bayhold.catalog;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.CatalogController.CorrectionRequest;
import org.bayhold.catalog.CatalogController.PartSpecRequest;
import org.bayhold.form.Forms;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import tools.jackson.databind.json.JsonMapper;

/** <i>Parts</i>: the catalogue, a part to add, one part with its corrections. */
@Controller
class PartPages {
    private static final int LISTED = 200;
    private static final String NEW = "catalog/part-new";
    private static final String ONE = "catalog/part";

    private final Catalog catalog;
    private final CatalogWrites writes;
    private final Forms forms;
    private final JsonMapper json;

    PartPages(Catalog catalog, CatalogWrites writes, Forms forms, JsonMapper json) {
        this.catalog = catalog;
        this.writes = writes;
        this.forms = forms;
        this.json = json;
    }

    /** A part as typed. */
    record PartForm(
            @Nullable String category,
            @Nullable String maker,
            @Nullable String partNumber,
            @Nullable String specRevision,
            @Nullable String attributes,
            @Nullable String complianceNote) {
        static final PartForm EMPTY = new PartForm(null, null, null, null, null, null);
    }

    /** A correction as typed. */
    record CorrectionForm(
            @Nullable String attributes, @Nullable String reason) {}

    @Needs(Act.READ)
    @GetMapping("/parts")
    String list(
            Caller caller,
            @RequestParam(required = false) @Nullable String category,
            @RequestParam(defaultValue = "") String q,
            Model model) {
        Category chosen = forms.read().choice("category", category, Category.class);
        model.addAttribute("categories", List.of(Category.values()));
        model.addAttribute("category", chosen == null ? "" : chosen.name());
        model.addAttribute("q", q);
        model.addAttribute("parts", catalog.find(chosen, q, LISTED));
        model.addAttribute("mayAdd", caller.may(Act.ADD_PART_SPEC));
        return "catalog/parts";
    }

    @Needs(Act.ADD_PART_SPEC)
    @GetMapping("/parts/new")
    String form(Model model) {
        Forms.fresh(model);
        return newPart(PartForm.EMPTY, model);
    }

    @Needs(Act.ADD_PART_SPEC)
    @PostMapping("/parts/new")
    String add(
            Call call,
            @ModelAttribute PartForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            Typed typed = forms.read();
            Category category = typed.choice("category", form.category(), Category.class);
            if (category == null && typed.isRight("category")) {
                typed.wrong("category", "form.choose");
            }
            PartSpecRequest request = new PartSpecRequest(
                    category == null ? Category.COSMETIC : category,
                    typed.needed("maker", form.maker()),
                    typed.needed("partNumber", form.partNumber()),
                    typed.needed("specRevision", form.specRevision()),
                    AttributeText.read(typed, "attributes", form.attributes(), json),
                    typed.text("complianceNote", form.complianceNote()));
            typed.check(request, "");
            typed.done();
            PartSpec added = writes.add(call.request(), request.spec()).value();
            redirect.addFlashAttribute("said", "said.part-added");
            return "redirect:/parts/" + added.id();
        } catch (Refusal refusal) {
            forms.refuse(atText(refusal), model, response);
            return newPart(form, model);
        }
    }

    private static String newPart(PartForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("categories", List.of(Category.values()));
        return NEW;
    }

    @Needs(Act.READ)
    @GetMapping("/parts/{id}")
    String one(Caller caller, @PathVariable UUID id, Model model) {
        Forms.fresh(model);
        PartSpec part = show(caller, id, model);
        model.addAttribute("form", new CorrectionForm(AttributeText.write(part.attributes()), null));
        return ONE;
    }

    @Needs(Act.CORRECT_PART_SPEC)
    @PostMapping("/parts/{id}/correct")
    String correct(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute CorrectionForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            Typed typed = forms.read();
            Map<String, Object> attributes = AttributeText.read(typed, "attributes", form.attributes(), json);
            String reason = typed.needed("reason", form.reason());
            typed.check(new CorrectionRequest(attributes, reason), "");
            typed.done();
            Attributes.validate(attributes);
            UUID corrected = writes.correct(call.request(), id, attributes, reason)
                    .value()
                    .partSpec()
                    .id();
            redirect.addFlashAttribute("said", "said.part-corrected");
            return "redirect:/parts/" + corrected;
        } catch (Refusal refusal) {
            if (refusal.code() == Code.NOT_FOUND) {
                throw refusal;
            }
            forms.refuse(atText(refusal), model, response);
            PartSpec ignored = show(call.caller(), id, model);
            model.addAttribute("form", form);
            return ONE;
        }
    }

    private PartSpec show(Caller caller, UUID id, Model model) {
        PartSpec part = catalog.spec(id).orElseThrow(() -> Refusal.notFound("part-spec.not-found"));
        model.addAttribute("part", part);
        model.addAttribute("mayCorrect", caller.may(Act.CORRECT_PART_SPEC));
        return part;
    }

    /** The page has one field for all attributes. */
    private static Refusal atText(Refusal refusal) {
        return new Refusal(
                refusal.code(),
                refusal.reasons().stream()
                        .map(reason -> new Refusal.Reason(
                                reason.field() != null && reason.field().startsWith("attributes.")
                                        ? "attributes"
                                        : reason.field(),
                                reason.key(),
                                reason.arguments()))
                        .toList());
    }
}
