package org.bayhold.drives;

import java.util.UUID;
import org.bayhold.buildsheet.CarForms;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** A judged drive: the verdict, what was found and what is missing, its pictures, how it was read. */
@Controller
class DrivePages {
    private static final String VIEW = "drives/drive";

    private final CarForms carForms;
    private final KnownDrives known;
    private final LoggedDrives drives;
    private final LogDownload download;
    private final LogJobs jobs;
    private final LogDrawing drawing;

    DrivePages(
            CarForms carForms,
            KnownDrives known,
            LoggedDrives drives,
            LogDownload download,
            LogJobs jobs,
            LogDrawing drawing) {
        this.carForms = carForms;
        this.known = known;
        this.drives = drives;
        this.download = download;
        this.jobs = jobs;
        this.drawing = drawing;
    }

    @Needs(Act.READ)
    @GetMapping("/cars/{id}/drive-logs/{logId}")
    ModelAndView drive(Caller caller, @PathVariable UUID id, @PathVariable UUID logId, Form form) {
        DriveLogged fact = known.fact(id, logId);
        Judged judged = known.judged(fact);
        return carForms.of(form.show(VIEW), caller, id, form)
                .addObject("log", known.view(id, logId))
                .addObject("judged", judged)
                .addObject("pictures", drawing.of(judged, caller.units()))
                .addObject("others", known.judgements(id, fact.drive()));
    }

    /** Under the policy of today, and with what the shop knows of columns today. */
    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/cars/{id}/drive-logs/{logId}/again")
    ModelAndView again(Call call, @PathVariable UUID id, @PathVariable UUID logId, Form form) {
        DriveLogged before = known.fact(id, logId);
        DriveLogRequest reading = DriveLogRequest.again(before, null, null, null);
        String here = CarForms.path(id) + "/drive-logs/" + logId;
        UUID job = jobs.begin(
                id, here, before.fileBytes(), progress -> drives.again(call, id, before.drive(), reading, progress));
        return new ModelAndView("redirect:" + CarForms.path(id) + "/drive-log/judging/" + job);
    }

    /** The file as it was uploaded. */
    @Needs(Act.READ)
    @GetMapping("/cars/{id}/drive-logs/{logId}/file")
    ResponseEntity<InputStreamResource> file(@PathVariable UUID id, @PathVariable UUID logId) {
        return download.of(known.fact(id, logId));
    }
}
