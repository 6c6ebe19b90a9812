package org.bayhold.calibration;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.form.Forms;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** <i>Calibrations</i>: the revisions, one to issue, one to withdraw with the owners to call. */
@Controller
class CalibrationPages {
    private static final int LISTED = 200;
    private static final int OFFERED_PARTS = 200;
    private static final String NEW = "calibration/calibration-new";
    private static final String ONE = "calibration/calibration";

    private final CalibrationWrites writes;
    private final CalibrationRows rows;
    private final CalibrationViews views;
    private final Calibrations calibrations;
    private final CalibrationForms calibrationForms;
    private final Catalog catalog;
    private final Forms forms;
    private final ObjectProvider<CarsRunning> carsRunning;

    CalibrationPages(
            CalibrationWrites writes,
            CalibrationRows rows,
            CalibrationViews views,
            Calibrations calibrations,
            CalibrationForms calibrationForms,
            Catalog catalog,
            Forms forms,
            ObjectProvider<CarsRunning> carsRunning) {
        this.writes = writes;
        this.rows = rows;
        this.views = views;
        this.calibrations = calibrations;
        this.calibrationForms = calibrationForms;
        this.catalog = catalog;
        this.forms = forms;
        this.carsRunning = carsRunning;
    }

    @Needs(Act.READ)
    @GetMapping("/calibrations")
    String list(Caller caller, @RequestParam(defaultValue = "") String q, Model model) {
        List<UUID> found = rows.newest(Page.like(q), Limit.of(LISTED));
        model.addAttribute("q", q);
        model.addAttribute("calibrations", views.of(found));
        model.addAttribute("mayIssue", caller.may(Act.ISSUE_CALIBRATION));
        return "calibration/calibrations";
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @GetMapping("/calibrations/new")
    String form(
            @RequestParam(required = false) @Nullable String ecuHardware,
            @RequestParam(required = false) @Nullable List<UUID> part,
            Model model) {
        Forms.fresh(model);
        return newCalibration(calibrationForms.covering(ecuHardware, part), model);
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping(path = "/calibrations/new", params = "more")
    String oneMore(@ModelAttribute CalibrationForm form, Model model) {
        Forms.fresh(model);
        return newCalibration(form.withOneMore(), model);
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping("/calibrations/new")
    String issue(
            Call call,
            @ModelAttribute CalibrationForm typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        CalibrationForm form = typed.withoutEmptyLines();
        try {
            CalibrationView issued =
                    writes.issue(call, calibrationForms.read(form)).value();
            redirect.addFlashAttribute("said", "said.calibration-issued");
            return "redirect:/calibrations/" + issued.id();
        } catch (Refusal refusal) {
            forms.refuse(CalibrationForms.named(refusal), model, response);
            return newCalibration(form, model);
        }
    }

    private String newCalibration(CalibrationForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("categories", List.of(Category.values()));
        model.addAttribute("purposes", Purpose.values());
        model.addAttribute("parts", catalog.find(null, "", OFFERED_PARTS));
        return NEW;
    }

    @Needs(Act.READ)
    @GetMapping("/calibrations/{id}")
    String one(Caller caller, @PathVariable UUID id, Model model) {
        Forms.fresh(model);
        show(caller, id, null, model);
        return ONE;
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping("/calibrations/{id}/withdraw")
    String withdraw(
            Call call,
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable String reason,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            Typed typed = forms.read();
            String why = typed.needed("reason", reason);
            typed.check(new CalibrationController.WithdrawalRequest(why), "");
            typed.done();
            CalibrationWrites.WithdrawalView withdrawn = writes.withdraw(call, id, why);
            redirect.addFlashAttribute("said", "said.calibration-withdrawn");
            redirect.addFlashAttribute(
                    "saidOf", new Object[] {withdrawn.affectedVehicles().size()});
            return "redirect:/calibrations/" + id;
        } catch (Refusal refusal) {
            if (refusal.code() == Code.NOT_FOUND) {
                throw refusal;
            }
            forms.refuse(refusal, model, response);
            show(call.caller(), id, Text.strip(reason), model);
            return ONE;
        }
    }

    private void show(Caller caller, UUID id, @Nullable String reason, Model model) {
        CalibrationView view =
                views.of(List.of(id)).stream().findFirst().orElseThrow(() -> Refusal.notFound("calibration.not-found"));
        Revision revision = calibrations.revision(id).orElseThrow();
        model.addAttribute("calibration", view);
        model.addAttribute("reason", reason);
        model.addAttribute(
                "specs",
                catalog.specs(view.coverage().stream()
                        .flatMap(line -> line.partSpecIds().stream())
                        .toList()));
        CarsRunning cars = carsRunning.getIfAvailable();
        model.addAttribute("cars", cars == null ? List.of() : cars.of(revision, caller));
        model.addAttribute("mayWithdraw", caller.may(Act.ISSUE_CALIBRATION));
    }
}
