package org.bayhold.audit;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.bayhold.identity.Act;
import org.bayhold.identity.Needs;
import org.bayhold.journal.JournalExport;
import org.bayhold.journal.Verdict;
import org.bayhold.journal.Verification;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** The journal verified here, and handed out so that anybody can verify it elsewhere. */
@RestController
@RequestMapping("/api/v1/journal")
class JournalController {
    private static final String JSON_LINES = "application/x-ndjson";

    private final Verification verification;
    private final JournalExport export;

    JournalController(Verification verification, JournalExport export) {
        this.verification = verification;
        this.export = export;
    }

    /** Every entry with its rows; the time that it takes grows with the record. */
    @Needs(Act.AUDIT)
    @GetMapping("/verification")
    Verdict verification() {
        return verification.verify();
    }

    /** Written as it is read: a task of its own would end at the server's limit for those. */
    @Needs(Act.AUDIT)
    @GetMapping(path = "/export", produces = JSON_LINES)
    void export(HttpServletResponse response) throws IOException {
        response.setContentType(JSON_LINES);
        response.setHeader("Content-Disposition", "attachment; filename=\"journal.ndjson\"");
        export.write(response.getOutputStream());
    }
}
