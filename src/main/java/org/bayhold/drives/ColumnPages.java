package org.bayhold.drives;

import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.CarForms;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.buildsheet.DriveLogged.Venue;
import org.bayhold.buildsheet.Fact;
import org.bayhold.drivelog.Parameter;
import org.bayhold.drivelog.Preview;
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

/** What a file that was received holds, and which drive it is of; from here it is judged. */
@Controller
class ColumnPages {
    private static final String VIEW = "drives/columns";

    private final CarForms carForms;
    private final EngineOnRecord engines;
    private final LogReading reading;
    private final ColumnMeanings meanings;
    private final LoggedDrives drives;
    private final LogFiles files;
    private final LogJobs jobs;

    ColumnPages(
            CarForms carForms,
            EngineOnRecord engines,
            LogReading reading,
            ColumnMeanings meanings,
            LoggedDrives drives,
            LogFiles files,
            LogJobs jobs) {
        this.carForms = carForms;
        this.engines = engines;
        this.reading = reading;
        this.meanings = meanings;
        this.drives = drives;
        this.files = files;
        this.jobs = jobs;
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @GetMapping("/cars/{id}/drive-log/{sha256}")
    ModelAndView columns(Caller caller, @PathVariable UUID id, @PathVariable String sha256, Form form) {
        Preview preview = reading.preview(sha256);
        ColumnForm.begin(form, ColumnForm.lines(preview));
        return show(form.show(VIEW), caller, id, sha256, preview, form);
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/cars/{id}/drive-log/{sha256}")
    ModelAndView judge(Call call, @PathVariable UUID id, @PathVariable String sha256, Form form) {
        Preview preview = reading.preview(sha256);
        ModelAndView page = form.submit(VIEW, () -> {
            List<ColumnSaid> said = ColumnForm.said(form, ColumnForm.lines(preview));
            DriveLogRequest request = new DriveLogRequest(
                    said,
                    form.decimal("sampleSeconds"),
                    form.text("map"),
                    form.choice("venue", Venue.class),
                    carForms.moment(form, id),
                    Fact.Source.SHOP,
                    form.text("performedBy"),
                    form.text("note"));
            form.check(request);
            if (!preview.hasTime() && request.sampleSeconds() == null && !saysTime(said)) {
                throw Refusal.invalid("sampleSeconds", "drive-log.say-seconds");
            }
            // what cannot be right is said here, before anybody waits
            engines.driven(id, request.effectiveAt()).map(request.map());
            if (form.checked("remember")) {
                call.caller().must(Act.ISSUE_CALIBRATION);
                meanings.tell(new Call(call.caller(), null, ""), said);
            }
            String here = CarForms.path(id) + "/drive-log/" + sha256;
            UUID job = jobs.begin(
                    id, here, files.bytes(sha256), progress -> drives.record(call, id, sha256, request, progress));
            return new ModelAndView("redirect:" + CarForms.path(id) + "/drive-log/judging/" + job);
        });
        return show(page, call.caller(), id, sha256, preview, form);
    }

    private static boolean saysTime(List<ColumnSaid> said) {
        return said.stream().anyMatch(column -> column.parameter() == Parameter.TIME);
    }

    private ModelAndView show(ModelAndView page, Caller caller, UUID id, String sha256, Preview preview, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        return carForms.of(page, caller, id, form)
                .addObject("driven", engines.driven(id, null))
                .addObject("sha256", sha256)
                .addObject("preview", preview)
                .addObject("lines", ColumnForm.lines(preview))
                .addObject("parameters", Parameter.values())
                .addObject("units", ColumnForm.units())
                .addObject("venues", Venue.values());
    }
}
