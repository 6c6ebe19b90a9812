package org.bayhold.catalog;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.CatalogController.CorrectionRequest;
import org.bayhold.catalog.CatalogController.PartSpecRequest;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.json.JsonMapper;

/** <i>Parts</i>: the catalogue, a part to add, one part with its corrections. */
@Controller
class PartPages {
    private static final int LISTED = 200;
    private static final String NEW = "catalog/part-new";
    private static final String ONE = "catalog/part";

    private final Catalog catalog;
    private final CatalogWrites writes;
    private final JsonMapper json;

    PartPages(Catalog catalog, CatalogWrites writes, JsonMapper json) {
        this.catalog = catalog;
        this.writes = writes;
        this.json = json;
    }

    @Needs(Act.READ)
    @GetMapping("/parts")
    ModelAndView list(Form form) {
        Category category = form.choice("category", Category.class);
        return form.show("catalog/parts")
                .addObject("categories", Category.values())
                .addObject("parts", catalog.find(category, form.value("named"), LISTED));
    }

    @Needs(Act.ADD_PART_SPEC)
    @GetMapping("/parts/new")
    ModelAndView form(Form form) {
        return choices(form.with("specRevision", "A").show(NEW));
    }

    @Needs(Act.ADD_PART_SPEC)
    @PostMapping("/parts/new")
    ModelAndView add(Call call, Form form) {
        ModelAndView page = form.submit(NEW, () -> {
            Category category = form.choice("category", Category.class);
            if (category == null && form.error("category") == null) {
                form.refused(Refusal.invalid("category", "form.choice"));
            }
            PartSpecRequest request = new PartSpecRequest(
                    category == null ? Category.COSMETIC : category,
                    form.required("maker"),
                    form.required("partNumber"),
                    form.required("specRevision"),
                    AttributeText.read(form, "attributes", json),
                    form.text("complianceNote"));
            form.check(request);
            try {
                PartSpec added = writes.add(call.request(), request.spec()).value();
                return form.done("/parts/" + added.id(), "said.part-added");
            } catch (Refusal refusal) {
                throw refusal.renamed(PartPages::ofPage);
            }
        });
        return !Form.leadsOn(page) ? choices(page) : page;
    }

    @Needs(Act.READ)
    @GetMapping("/parts/{id}")
    ModelAndView one(Caller caller, @PathVariable UUID id, Form form) {
        PartSpec part = part(id);
        return of(
                part,
                caller,
                form.with("attributes", AttributeText.write(part.attributes())).show(ONE));
    }

    @Needs(Act.CORRECT_PART_SPEC)
    @PostMapping("/parts/{id}/correct")
    ModelAndView correct(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ONE, () -> {
            Map<String, Object> attributes = AttributeText.read(form, "attributes", json);
            String reason = form.required("reason");
            CorrectionRequest request = new CorrectionRequest(attributes, reason);
            form.check(request);
            try {
                PartSpec corrected = writes.correct(call.request(), id, request.attributesFor(part(id)), reason)
                        .value()
                        .partSpec();
                return form.done("/parts/" + corrected.id(), "said.part-corrected");
            } catch (Refusal refusal) {
                throw refusal.renamed(PartPages::ofPage);
            }
        });
        return Form.leadsOn(page) ? page : of(part(id), call.caller(), page);
    }

    private static ModelAndView of(PartSpec part, Caller caller, ModelAndView page) {
        return page.addObject("part", part)
                .addObject("attributes", PartAttributes.of(part.category()).show(part.attributes(), caller.units()))
                .addObject("takes", takes(part.category()));
    }

    private static ModelAndView choices(ModelAndView page) {
        Map<Category, List<Attribute>> takes = new EnumMap<>(Category.class);
        for (Category category : Category.values()) {
            takes.put(category, takes(category));
        }
        return page.addObject("categories", Category.values()).addObject("takes", takes);
    }

    private static List<Attribute> takes(Category category) {
        return PartAttributes.of(category).attributes();
    }

    private PartSpec part(UUID id) {
        return catalog.spec(id).orElseThrow(() -> Refusal.notFound("part-spec.not-found"));
    }

    /** The page has one field for all attributes. */
    private static String ofPage(String field) {
        return field.startsWith("attributes.") ? "attributes" : field;
    }
}
