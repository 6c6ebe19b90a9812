package org.bayhold.audit;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.util.MimeType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;

/** Handovers against the record, and the cars that follow from it, over HTTP. */
@RestController
@RequestMapping("/api/v1/audit")
class AuditController {
    private static final String JSON = MediaType.APPLICATION_JSON_VALUE;
    private static final String CSV = "text/csv";
    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final List<String> FORMATS = List.of(JSON, CSV, XLSX);
    private static final int BUFFER = 1 << 16;

    private final HandoffAudit audit;
    private final Exposures exposures;
    private final JsonMapper mapper;

    AuditController(HandoffAudit audit, Exposures exposures, JsonMapper mapper) {
        this.audit = audit;
        this.exposures = exposures;
        this.mapper = mapper;
    }

    /** Written as it is found: a million handovers take no more memory than a hundred. */
    @Needs(Act.AUDIT)
    @ApiResponse(
            responseCode = "200",
            content = {
                @Content(
                        mediaType = JSON,
                        array = @ArraySchema(schema = @Schema(implementation = AuditedHandoff.class))),
                @Content(mediaType = CSV, schema = @Schema(type = "string")),
                @Content(mediaType = XLSX, schema = @Schema(type = "string", format = "binary"))
            })
    @GetMapping(
            path = "/handoffs",
            produces = {JSON, CSV, XLSX})
    void handoffs(
            @RequestParam @Nullable Instant from,
            @RequestParam @Nullable Instant to,
            @RequestParam @Nullable Set<Finding> finding,
            @RequestParam @Nullable String site,
            @RequestParam @Nullable String person,
            @RequestParam @Nullable Boolean unmatched,
            @RequestParam @Nullable Instant knownAt,
            @RequestParam @Nullable UUID after,
            @RequestParam @Nullable Integer limit,
            HttpServletRequest request,
            HttpServletResponse response)
            throws IOException {
        HandoffAudit.Ready ready = audit.ready(new AuditQuestion(
                from,
                to,
                finding == null ? Set.of() : finding,
                site,
                person,
                unmatched,
                after,
                limit == null ? null : Page.size(limit),
                knownAt));
        String format = format(request);
        response.setContentType(format.equals(CSV) ? CSV + ";charset=UTF-8;header=present" : format);
        response.setHeader("Bayhold-Provisional", Boolean.toString(ready.provisional()));
        if (!format.equals(JSON)) {
            String name = format.equals(CSV) ? "handovers.csv" : "handovers.xlsx";
            response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"");
        }
        OutputStream out = new BufferedOutputStream(response.getOutputStream(), BUFFER);
        ExportRows rows = rows(format, out);
        audit.tell(ready, rows);
        // not in a finally: half an answer must not look like a whole one
        rows.close();
        out.close();
    }

    private ExportRows rows(String format, OutputStream out) {
        return switch (format) {
            case CSV -> new CsvRows(out);
            case XLSX -> new XlsxRows(out);
            default -> new JsonRows(out, mapper);
        };
    }

    /** The format that the caller likes best; Spring has refused whoever takes none of them. */
    private static String format(HttpServletRequest request) {
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        if (accept == null) {
            return JSON;
        }
        return MediaType.parseMediaTypes(accept).stream()
                .filter(type -> type.getQualityValue() > 0)
                .sorted(Comparator.comparing(MediaType::getQualityValue)
                        .reversed()
                        .thenComparing(MimeType::isWildcardType))
                .flatMap(type -> FORMATS.stream().filter(format -> type.includes(MediaType.parseMediaType(format))))
                .findFirst()
                .orElse(JSON);
    }

    @Needs(Act.AUDIT)
    @GetMapping("/exposures")
    Page<Exposure> exposures(Caller caller) {
        return Page.whole(exposures.list(caller));
    }
}
