package org.bayhold.calibration;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.page.Form;
import org.bayhold.prediction.Assumptions;
import org.bayhold.refusal.Refusal;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** <i>Calibrations</i>: the revisions, one to issue, one to withdraw with the owners to call. */
@Controller
class CalibrationPages {
    private static final int LISTED = 200;
    private static final int OFFERED_PARTS = 200;
    private static final int MOST_LINES = 40;
    private static final String NEW = "calibration/calibration-new";
    private static final String ONE = "calibration/calibration";

    private final CalibrationWrites writes;
    private final CalibrationRows rows;
    private final CalibrationViews views;
    private final Calibrations calibrations;
    private final CalibrationForms calibrationForms;
    private final Catalog catalog;
    private final ObjectProvider<CarsRunning> carsRunning;

    CalibrationPages(
            CalibrationWrites writes,
            CalibrationRows rows,
            CalibrationViews views,
            Calibrations calibrations,
            CalibrationForms calibrationForms,
            Catalog catalog,
            ObjectProvider<CarsRunning> carsRunning) {
        this.writes = writes;
        this.rows = rows;
        this.views = views;
        this.calibrations = calibrations;
        this.calibrationForms = calibrationForms;
        this.catalog = catalog;
        this.carsRunning = carsRunning;
    }

    @Needs(Act.READ)
    @GetMapping("/calibrations")
    ModelAndView list(Form form) {
        List<UUID> found = rows.newest(Page.like(form.value("named")), Limit.of(LISTED));
        return form.show("calibration/calibrations").addObject("calibrations", views.of(found));
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @GetMapping("/calibrations/new")
    ModelAndView form(@RequestParam(defaultValue = "") List<UUID> part, Form form) {
        int lines = calibrationForms.cover(form.with("purpose", Purpose.NORMAL), part);
        return page(form.show(NEW), Math.max(1, lines), 0);
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping(path = "/calibrations/new", params = "more")
    ModelAndView oneMore(Form form) {
        return page(form.show(NEW), Math.min(form.count("lines") + 1, MOST_LINES), form.count("maps"));
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping(path = "/calibrations/new", params = "map")
    ModelAndView oneMoreMap(Form form) {
        return page(form.show(NEW), lines(form), Math.min(form.count("maps") + 1, MapRequest.MOST));
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping("/calibrations/new")
    ModelAndView issue(Call call, Form form) {
        CalibrationForms.Numbers numbers = new CalibrationForms.Numbers();
        ModelAndView page = form.submit(NEW, () -> {
            CalibrationRequest request = calibrationForms.read(form, numbers);
            form.check(request, field -> CalibrationForms.ofPage(field, numbers));
            try {
                CalibrationView issued = writes.issue(call, request).value();
                issued.warnings().forEach(warning -> form.say("warning." + warning));
                return form.done("/calibrations/" + issued.id(), "said.calibration-issued");
            } catch (Refusal refusal) {
                throw refusal.renamed(field -> CalibrationForms.ofPage(field, numbers));
            }
        });
        return page(page, lines(form), form.count("maps"));
    }

    private static int lines(Form form) {
        return Math.max(1, form.count("lines"));
    }

    private ModelAndView page(ModelAndView page, int lineCount, int mapCount) {
        return !Form.leadsOn(page)
                ? page.addObject("lineCount", lineCount)
                        .addObject("mapCount", mapCount)
                        .addObject("categories", Category.values())
                        .addObject("purposes", Purpose.values())
                        .addObject("takes", Assumptions.ALL.attributes())
                        .addObject("parts", catalog.find(null, "", OFFERED_PARTS))
                : page;
    }

    @Needs(Act.READ)
    @GetMapping("/calibrations/{id}")
    ModelAndView one(Caller caller, @PathVariable UUID id, Form form) {
        return one(form.show(ONE), caller, id);
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping("/calibrations/{id}/withdraw")
    ModelAndView withdraw(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ONE, () -> {
            String reason = form.required("reason");
            form.check(new CalibrationController.WithdrawalRequest(reason));
            CalibrationWrites.WithdrawalView withdrawn = writes.withdraw(call, id, reason);
            return form.done(
                    "/calibrations/" + id,
                    "said.calibration-withdrawn",
                    withdrawn.affectedVehicles().size());
        });
        return one(page, call.caller(), id);
    }

    private ModelAndView one(ModelAndView page, Caller caller, UUID id) {
        if (Form.leadsOn(page)) {
            return page;
        }
        CalibrationView view =
                views.of(List.of(id)).stream().findFirst().orElseThrow(() -> Refusal.notFound("calibration.not-found"));
        Revision revision = calibrations.revision(id).orElseThrow();
        CarsRunning running = carsRunning.getIfAvailable();
        return page.addObject("calibration", view)
                .addObject("assumes", Assumptions.ALL.show(view.assumes(), caller.units()))
                .addObject("cars", running == null ? List.of() : running.of(revision, caller))
                .addObject(
                        "specs",
                        catalog.specs(Stream.concat(
                                        view.coverage().stream().map(CalibrationView.Line::partSpecIds),
                                        view.maps().stream().map(MapView::fuels))
                                .flatMap(List::stream)
                                .toList()));
    }
}
