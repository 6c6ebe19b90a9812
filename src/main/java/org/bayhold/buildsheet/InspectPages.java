package org.bayhold.buildsheet;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

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
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        return page(form.show(VIEW), caller, id, form);
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/inspect")
    ModelAndView record(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            InspectionRequest request = new InspectionRequest(
                    lines(form),
                    carForms.moment(form, id),
                    Fact.Source.SHOP,
                    form.integer("odometerKm"),
                    form.text("note"));
            if (request.lines().isEmpty()) {
                form.refused(Refusal.invalid("restFactory", "inspect.nothing-found"));
            }
            form.check(request);
            try {
                InspectionView view =
                        facts.record(call, id, inspections, request).value();
                CarForms.warn(form, view.warnings());
                int places = view.lines().size();
                int differences = view.differences().size();
                return differences == 0
                        ? form.done(CarForms.path(id), "said.inspected", places)
                        : form.done(CarForms.path(id), "said.inspected.differs", places, differences);
            } catch (Refusal refusal) {
                throw CarForms.named(refusal);
            }
        });
        return page(page, call.caller(), id, form);
    }

    private List<InspectionRequest.Line> lines(Form form) {
        boolean restFactory = form.checked("restFactory");
        List<InspectionRequest.Line> lines = new ArrayList<>();
        for (int i = 0; i < form.count("lines"); i++) {
            String at = "lines[" + i + "].";
            Place place = PlaceField.read(form.value(at + "place"));
            if (place == null) {
                form.refused(Refusal.invalid(at + "place", "form.choice"));
                continue;
            }
            String part = form.text(at + "part");
            Fitted.State found = part == null ? form.choice(at + "found", Fitted.State.class) : Fitted.State.PART;
            if (found == null && restFactory) {
                found = Fitted.State.FACTORY;
            }
            if (found != null) {
                lines.add(new InspectionRequest.Line(
                        place.category(),
                        place.position(),
                        found,
                        found == Fitted.State.PART ? part(form, at + "part", place.category(), part) : null));
            }
        }
        return lines;
    }

    private @Nullable UUID part(Form form, String field, Category category, @Nullable String part) {
        List<PartSpec> named = part == null ? List.of() : catalog.named(category, part);
        if (named.size() != 1) {
            form.refused(Refusal.invalid(field, part == null ? "inspect.name-the-part" : "inspect.no-such-part"));
            return null;
        }
        return named.get(0).id();
    }

    private ModelAndView page(ModelAndView page, Caller caller, UUID id, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        CarRecord record = records.of(id);
        AsOf now = AsOf.of(record, clock, null, null);
        List<BuildLine> onCar = record.at(now.effectiveAt(), now.knownAt()).lines();
        Map<UUID, PartSpec> specs = catalog.specs(onCar.stream()
                .flatMap(line -> Stream.ofNullable(line.fitted().partSpecId()))
                .toList());
        return carForms.of(page, caller, id, form)
                .addObject("states", List.of(Fitted.State.FACTORY, Fitted.State.PART, Fitted.State.NONE))
                .addObject("parts", catalog.find(null, "", OFFERED_PARTS))
                .addObject(
                        "places",
                        onCar.stream()
                                .map(line -> new OnRecord(
                                        PlaceField.value(line.place()),
                                        line.place().category(),
                                        line.place().position(),
                                        line.fitted().state(),
                                        specs.get(line.fitted().partSpecId())))
                                .toList());
    }
}
