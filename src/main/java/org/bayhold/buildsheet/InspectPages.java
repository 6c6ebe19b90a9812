package org.bayhold.buildsheet;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** <i>Inspect</i>: what was found on the car, place by place. */
@Controller
class InspectPages {
    private static final String VIEW = "buildsheet/inspect";
    private static final int OFFERED_PARTS = 200;

    private final CarForms carForms;
    private final RecordFacts facts;
    private final InspectionRecorder inspections;
    private final CarRecords records;
    private final Catalog catalog;
    private final Clock clock;

    InspectPages(
            CarForms carForms,
            RecordFacts facts,
            InspectionRecorder inspections,
            CarRecords records,
            Catalog catalog,
            Clock clock) {
        this.carForms = carForms;
        this.facts = facts;
        this.inspections = inspections;
        this.records = records;
        this.catalog = catalog;
        this.clock = clock;
    }

    /** A place with what is on record for it. */
    record OnRecord(
            String value,
            Category category,
            @Nullable String position,
            Fitted.State state,
            @Nullable PartSpec part) {}

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/inspect")
    String form(Caller caller, @PathVariable UUID id, Model model) {
        return show(caller, id, new InspectForm(null, null, null, null, null, null), model);
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/inspect")
    String record(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute InspectForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        show(call.caller(), id, form, model);
        try {
            Typed typed = carForms.read();
            InspectionRequest request = new InspectionRequest(
                    lines(typed, form),
                    carForms.moment(typed, model, id, form.when(), form.order()).at(),
                    Fact.Source.SHOP,
                    typed.whole("odometerKm", form.odometerKm()),
                    typed.text("note", form.note()));
            if (request.lines().isEmpty()) {
                typed.wrong("lines", "inspect.nothing-found");
            }
            typed.check(request, "");
            typed.done();
            InspectionView view = facts.record(call, id, inspections, request).value();
            return CarForms.toCar(
                    id,
                    redirect,
                    view.differences().isEmpty() ? "said.inspected" : "said.inspected.differs",
                    view.lines().size(),
                    view.differences().size());
        } catch (Refusal refusal) {
            return carForms.again(refusal, model, response, VIEW);
        }
    }

    private List<InspectionRequest.Line> lines(Typed typed, InspectForm form) {
        List<InspectionRequest.Line> lines = new ArrayList<>();
        for (int i = 0; i < form.typedLines().size(); i++) {
            InspectForm.Line line = form.typedLines().get(i);
            String at = "lines[" + i + "].";
            String place = line.place() == null ? "" : line.place();
            int colon = place.indexOf(':');
            Category category =
                    typed.choice(at + "place", colon < 0 ? place : place.substring(0, colon), Category.class);
            Fitted.State state = typed.choice(at + "found", line.found(), Fitted.State.class);
            String part = typed.text(at + "part", line.part());
            if (part != null) {
                state = Fitted.State.PART; // whoever names a part has found one
            }
            if (state == null && form.restFactory() != null) {
                state = Fitted.State.FACTORY;
            }
            if (category != null && state != null) {
                UUID spec = state == Fitted.State.PART ? part(typed, at + "part", category, part) : null;
                lines.add(new InspectionRequest.Line(
                        category, colon < 0 ? null : place.substring(colon + 1), state, spec));
            }
        }
        return lines;
    }

    private @Nullable UUID part(Typed typed, String field, Category category, @Nullable String part) {
        List<PartSpec> named = part == null ? List.of() : catalog.named(category, part);
        if (named.size() != 1) {
            typed.wrong(field, part == null ? "inspect.name-the-part" : "inspect.no-such-part");
            return null;
        }
        return named.get(0).id();
    }

    private String show(Caller caller, UUID id, InspectForm form, Model model) {
        carForms.show(model, caller, id, form);
        model.addAttribute("states", List.of(Fitted.State.FACTORY, Fitted.State.PART, Fitted.State.NONE));
        model.addAttribute("parts", catalog.find(null, "", OFFERED_PARTS));
        CarRecord record = records.of(id);
        AsOf now = AsOf.of(record, clock, null, null);
        List<BuildLine> onCar = record.at(now.effectiveAt(), now.knownAt()).lines();
        Map<UUID, PartSpec> specs = catalog.specs(onCar.stream()
                .flatMap(line -> Stream.ofNullable(line.fitted().partSpecId()))
                .toList());
        model.addAttribute(
                "places",
                onCar.stream()
                        .map(line -> new OnRecord(
                                line.place().category()
                                        + (line.place().position() == null
                                                ? ""
                                                : ":" + line.place().position()),
                                line.place().category(),
                                line.place().position(),
                                line.fitted().state(),
                                specs.get(line.fitted().partSpecId())))
                        .toList());
        return VIEW;
    }
}
