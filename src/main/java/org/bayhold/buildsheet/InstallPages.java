package org.bayhold.buildsheet;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** <i>Log an install</i>: what was fitted, removed or adjusted, several parts at once. */
@Controller
class InstallPages {
    private static final String VIEW = "buildsheet/install";
    /** What the list begins with; it follows the typing where scripts run. */
    private static final int OFFERED_PARTS = 200;

    private static final int SUGGESTED_PARTS = 30;
    private static final int FOUND_CARS = 20;
    private static final int MOST_LINES = 30;
    private static final Pattern OF_A_FACT = Pattern.compile("facts\\[(\\d+)]\\.(.+)");

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

    /** A place with something of its own on the car, as the page sends it. */
    record OnCar(
            String value,
            Category category,
            @Nullable String position,
            @Nullable PartSpec part) {}

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/install")
    ModelAndView whichCar(Caller caller, @RequestParam(defaultValue = "") String car) {
        List<VehicleView> found = car.isBlank() ? List.of() : vehicles.search(car, FOUND_CARS, caller);
        return found.size() == 1
                ? new ModelAndView("redirect:" + CarForms.path(found.get(0).id()) + "/install")
                : new ModelAndView("buildsheet/install-which-car", Map.of("typed", car, "found", found));
    }

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/install")
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        return page(form.show(VIEW), caller, id, form, Math.max(1, Math.min(form.count("lines"), MOST_LINES)));
    }

    /** What the catalogue has for the words that are being typed, whichever field they are typed in. */
    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/parts/suggestions")
    ModelAndView suggestions(@RequestParam Map<String, String> typed) {
        String words = typed.values().stream().findFirst().orElse("");
        return new ModelAndView(
                "buildsheet/fields :: parts", Map.of("parts", catalog.find(null, words, SUGGESTED_PARTS)));
    }

    /** One more part on the same page; nothing is recorded. */
    @Needs(Act.RECORD_ON_CAR)
    @PostMapping(path = "/cars/{id}/install", params = "more")
    ModelAndView oneMore(Caller caller, @PathVariable UUID id, Form form) {
        return page(form.show(VIEW), caller, id, form, Math.min(form.count("lines") + 1, MOST_LINES));
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/install")
    ModelAndView record(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            List<InstallLines.Typed> typed = lines.read(form, carForms.moment(form, id));
            form.check();
            try {
                RecordFacts.Several recorded = facts.recordAll(
                                call,
                                id,
                                partChanges,
                                typed.stream().map(InstallLines.Typed::request).toList())
                        .value();
                CarForms.warn(form, recorded.warnings());
                return form.done(
                        CarForms.path(id), "said.install", recorded.answers().size());
            } catch (Refusal refusal) {
                throw refusal.renamed(field -> ofPage(field, typed));
            }
        });
        return page(page, call.caller(), id, form, Math.max(1, form.count("lines")));
    }

    /** Fields of a recorded fact stand in the page under its line, and what all have in common once. */
    private static String ofPage(String field, List<InstallLines.Typed> typed) {
        Matcher fact = OF_A_FACT.matcher(field);
        if (!fact.matches()) {
            return field;
        }
        String name = fact.group(2);
        int line = typed.get(Integer.parseInt(fact.group(1))).line();
        return switch (name) {
            case "effectiveAt" -> "when";
            case "odometerKm", "performedBy", "source" -> name;
            case "category" -> InstallLines.field(line, "place");
            case "partSpecId" -> InstallLines.field(line, "part");
            default -> InstallLines.field(line, name);
        };
    }

    private ModelAndView page(ModelAndView page, Caller caller, UUID id, Form form, int lineCount) {
        if (Form.leadsOn(page)) {
            return page;
        }
        return carForms.of(page, caller, id, form)
                .addObject("lineCount", lineCount)
                .addObject("candidates", lines.candidates(form))
                .addObject("actions", Fact.Action.values())
                .addObject("sources", Fact.Source.values())
                .addObject("categories", Category.values())
                .addObject("parts", catalog.find(null, "", OFFERED_PARTS))
                .addObject("onCar", onCar(id));
    }

    private List<OnCar> onCar(UUID id) {
        CarRecord record = records.of(id);
        AsOf now = AsOf.of(record, clock, null, null);
        List<BuildLine> fitted = record.at(now.effectiveAt(), now.knownAt()).lines().stream()
                .filter(line -> line.place().position() != null || line.fitted().state() == Fitted.State.PART)
                .toList();
        Map<UUID, PartSpec> specs = catalog.specs(fitted.stream()
                .flatMap(line -> Stream.ofNullable(line.fitted().partSpecId()))
                .toList());
        return fitted.stream()
                .map(line -> new OnCar(
                        PlaceField.value(line.place()),
                        line.place().category(),
                        line.place().position(),
                        specs.get(line.fitted().partSpecId())))
                .toList();
    }
}
