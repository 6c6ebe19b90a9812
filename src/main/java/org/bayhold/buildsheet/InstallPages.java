package org.bayhold.buildsheet;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** <i>Log an install</i>: what was fitted, removed or adjusted, several parts at once. */
@Controller
class InstallPages {
    private static final String VIEW = "buildsheet/install";
    private static final int OFFERED_PARTS = 200;
    private static final int FOUND_CARS = 20;

    private final CarForms carForms;
    private final InstallLines lines;
    private final RecordFacts facts;
    private final PartChangeRecorder partChanges;
    private final CarRecords records;
    private final Catalog catalog;
    private final Vehicles vehicles;
    private final Clock clock;

    InstallPages(
            CarForms carForms,
            InstallLines lines,
            RecordFacts facts,
            PartChangeRecorder partChanges,
            CarRecords records,
            Catalog catalog,
            Vehicles vehicles,
            Clock clock) {
        this.carForms = carForms;
        this.lines = lines;
        this.facts = facts;
        this.partChanges = partChanges;
        this.records = records;
        this.catalog = catalog;
        this.vehicles = vehicles;
        this.clock = clock;
    }

    /** A place with something of its own on the car. */
    record OnCar(
            String value,
            Category category,
            @Nullable String position,
            @Nullable PartSpec part,
            Fitted.State state) {}

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/install")
    String whichCar(Caller caller, @RequestParam(defaultValue = "") String q, Model model) {
        List<VehicleView> found = q.isBlank() ? List.of() : vehicles.find(q, FOUND_CARS, caller);
        if (found.size() == 1) {
            return "redirect:/cars/" + found.get(0).id() + "/install";
        }
        model.addAttribute("q", q);
        model.addAttribute("found", found);
        return "buildsheet/install-which-car";
    }

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/install")
    String form(Caller caller, @PathVariable UUID id, Model model) {
        return show(caller, id, InstallForm.EMPTY, Map.of(), model);
    }

    /** One more part on the same page; nothing is recorded. */
    @Needs(Act.RECORD_ON_CAR)
    @PostMapping(path = "/cars/{id}/install", params = "more")
    String oneMore(Caller caller, @PathVariable UUID id, @ModelAttribute InstallForm form, Model model) {
        return show(caller, id, form.withOneMore(), Map.of(), model);
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/install")
    String record(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute InstallForm typedForm,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        InstallForm form = typedForm.withoutEmptyLines();
        show(call.caller(), id, form, Map.of(), model);
        try {
            Typed typed = carForms.read();
            InstallLines.Common common = new InstallLines.Common(
                    carForms.moment(typed, model, id, form.when(), form.order()).at(),
                    typed.whole("odometerKm", form.odometerKm()),
                    typed.choice("source", form.source(), Fact.Source.class, Fact.Source.SHOP),
                    typed.text("performedBy", form.performedBy()));
            InstallLines.Read read = lines.read(typed, form, common);
            model.addAttribute("candidates", read.candidates());
            typed.done();
            RecordFacts.Several recorded =
                    facts.recordAll(call, id, partChanges, read.requests()).value();
            return CarForms.toCar(
                    id, redirect, "said.install", recorded.answers().size());
        } catch (Refusal refusal) {
            return carForms.again(ofLines(refusal), model, response, VIEW);
        }
    }

    /** Fields of a recorded fact stand in the page under its line. */
    private static Refusal ofLines(Refusal refusal) {
        return new Refusal(
                refusal.code(),
                refusal.reasons().stream()
                        .map(reason -> new Refusal.Reason(field(reason.field()), reason.key(), reason.arguments()))
                        .toList());
    }

    private static @Nullable String field(@Nullable String field) {
        if (field == null) {
            return null;
        }
        String name = field.replaceFirst("^facts\\[", "lines[");
        for (String common : List.of("odometerKm", "performedBy", "source")) {
            if (name.endsWith("]." + common)) {
                return common;
            }
        }
        return name.replaceFirst("]\\.effectiveAt$", "].when")
                .replaceFirst("^lines\\[\\d+]\\.when$", "when")
                .replaceFirst("]\\.category$", "].place")
                .replaceFirst("]\\.partSpecId$", "].part");
    }

    private String show(
            Caller caller, UUID id, InstallForm form, Map<Integer, List<PartSpec>> candidates, Model model) {
        carForms.show(model, caller, id, form);
        model.addAttribute("candidates", candidates);
        model.addAttribute("actions", Fact.Action.values());
        model.addAttribute("categories", Arrays.asList(Category.values()));
        model.addAttribute("parts", catalog.find(null, "", OFFERED_PARTS));
        model.addAttribute("onCar", onCar(id));
        return VIEW;
    }

    private List<OnCar> onCar(UUID id) {
        CarRecord record = records.of(id);
        AsOf now = AsOf.of(record, clock, null, null);
        List<BuildLine> fitted = record.at(now.effectiveAt(), now.knownAt()).lines().stream()
                .filter(line -> line.place().position() != null || line.fitted().state() == Fitted.State.PART)
                .toList();
        Map<UUID, PartSpec> specs = catalog.specs(fitted.stream()
                .flatMap(
                        line -> java.util.stream.Stream.ofNullable(line.fitted().partSpecId()))
                .toList());
        return fitted.stream()
                .map(line -> new OnCar(
                        line.place().category()
                                + (line.place().position() == null
                                        ? ""
                                        : ":" + line.place().position()),
                        line.place().category(),
                        line.place().position(),
                        specs.get(line.fitted().partSpecId()),
                        line.fitted().state()))
                .toList();
    }
}
