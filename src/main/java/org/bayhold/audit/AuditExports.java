package org.bayhold.audit;

import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Sends an audit as it is found: a million handovers take no more memory than a hundred. */
@Component
class AuditExports {
    static final String JSON = MediaType.APPLICATION_JSON_VALUE;
    static final String CSV = "text/csv";
    static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final int BUFFER = 1 << 16;

    private final HandoffAudit audit;
    private final JsonMapper mapper;

    AuditExports(HandoffAudit audit, JsonMapper mapper) {
        this.audit = audit;
        this.mapper = mapper;
    }

    enum Format {
        JSON(AuditExports.JSON, null),
        CSV(AuditExports.CSV + ";charset=UTF-8;header=present", "handovers.csv"),
        XLSX(AuditExports.XLSX, "handovers.xlsx");

        private final String contentType;
        private final @Nullable String file;

        Format(String contentType, @Nullable String file) {
            this.contentType = contentType;
            this.file = file;
        }
    }

    void send(AuditQuestion question, Format format, HttpServletResponse response) throws IOException {
        HandoffAudit.Ready ready = audit.ready(question);
        response.setContentType(format.contentType);
        response.setHeader("Bayhold-Provisional", Boolean.toString(ready.provisional()));
        if (format.file != null) {
            response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + format.file + "\"");
        }
        OutputStream out = new BufferedOutputStream(response.getOutputStream(), BUFFER);
        ExportRows rows = rows(format, out);
        audit.tell(ready, rows);
        // not in a finally: half an answer must not look like a whole one
        rows.close();
        out.flush();
    }

    private ExportRows rows(Format format, OutputStream out) {
        return switch (format) {
            case CSV -> new CsvRows(out);
            case XLSX -> new XlsxRows(out);
            case JSON -> new JsonRows(out, mapper);
        };
    }
}
