package org.bayhold.drives;

import java.io.IOException;
import java.io.InputStream;
import java.util.UUID;
import org.bayhold.buildsheet.CarForms;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;

/** <i>Drive log</i>: the file of a drive, before anything is said of it. */
@Controller
class UploadPages {
    private static final String VIEW = "drives/upload";

    private final CarForms carForms;
    private final EngineOnRecord engines;
    private final LogFiles files;
    private final LogReading reading;
    private final LogSettings settings;

    UploadPages(CarForms carForms, EngineOnRecord engines, LogFiles files, LogReading reading, LogSettings settings) {
        this.carForms = carForms;
        this.engines = engines;
        this.files = files;
        this.reading = reading;
        this.settings = settings;
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @GetMapping("/cars/{id}/drive-log")
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        return show(form.show(VIEW), caller, id, form);
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/cars/{id}/drive-log")
    ModelAndView receive(
            Call call, @PathVariable UUID id, @RequestParam(required = false) @Nullable MultipartFile file, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            if (file == null || file.isEmpty()) {
                throw Refusal.invalid("file", "drive-log.choose");
            }
            LogFiles.Uploaded uploaded = received(file);
            try {
                reading.preview(uploaded.sha256());
            } catch (Refusal refused) {
                files.drop(uploaded.sha256());
                throw refused;
            }
            return new ModelAndView("redirect:" + CarForms.path(id) + "/drive-log/" + uploaded.sha256());
        });
        return show(page, call.caller(), id, form);
    }

    private LogFiles.Uploaded received(MultipartFile file) {
        try (InputStream in = file.getInputStream()) {
            return files.receive(in);
        } catch (IOException failed) {
            throw Refusal.of(Code.UNAVAILABLE, "drive-log.files-unavailable");
        }
    }

    private ModelAndView show(ModelAndView page, Caller caller, UUID id, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        return carForms.of(page, caller, id, form)
                .addObject("driven", engines.driven(id, null))
                .addObject("largestMb", settings.largest().toMegabytes());
    }
}
