package org.bayhold.drives;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.bayhold.buildsheet.CarForms;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** How far a log is judged. The page comes again by itself, and may be left. */
@Controller
class JudgingPage {
    private static final String SECONDS = "2";

    private final CarForms carForms;
    private final LogJobs jobs;

    JudgingPage(CarForms carForms, LogJobs jobs) {
        this.carForms = carForms;
        this.jobs = jobs;
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @GetMapping("/cars/{id}/drive-log/judging/{job}")
    ModelAndView progress(
            Caller caller, @PathVariable UUID id, @PathVariable UUID job, Form form, HttpServletResponse response) {
        LogJobs.Progress progress = jobs.progress(job)
                .filter(known -> known.vehicleId().equals(id))
                .orElseThrow(() -> Refusal.notFound("drive-log.not-judging"));
        if (progress.view() != null) {
            CarForms.warn(form, progress.view().warnings());
            return form.done(
                    CarForms.path(id) + "/drive-logs/" + progress.view().id(),
                    "said.drive-log." + progress.view().verdict().name());
        }
        if (progress.refusal() != null) {
            form.refused(progress.refusal());
        } else {
            response.setHeader("Refresh", SECONDS);
        }
        return carForms.of(form.show("drives/judging"), caller, id, form).addObject("progress", progress);
    }
}
