package org.bayhold.audit;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Instant;
import java.util.Comparator;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
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

/** Handovers against the record, and the cars that follow from it, over HTTP. */
@RestController
@RequestMapping("/api/v1/audit")
class AuditController {
    private static final String JSON = AuditExports.JSON;
    private static final String CSV = AuditExports.CSV;
    private static final String XLSX = AuditExports.XLSX;
    private static final Map<String, AuditExports.Format> FORMATS =
            Map.of(JSON, AuditExports.Format.JSON, CSV, AuditExports.Format.CSV, XLSX, AuditExports.Format.XLSX);

    private final AuditExports exports;
    private final Exposures exposures;

    AuditController(AuditExports exports, Exposures exposures) {
        this.exports = exports;
        this.exposures = exposures;
    }

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
        AuditQuestion question = new AuditQuestion(
                from,
                to,
                finding == null ? Set.of() : finding,
                site,
                person,
                unmatched,
                after,
                limit == null ? null : Page.size(limit),
                knownAt);
        exports.send(question, format(request), response);
    }

    /** The format that the caller likes best; Spring has refused whoever takes none of them. */
    private static AuditExports.Format format(HttpServletRequest request) {
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        if (accept == null) {
            return AuditExports.Format.JSON;
        }
        return MediaType.parseMediaTypes(accept).stream()
                .filter(type -> type.getQualityValue() > 0)
                .sorted(Comparator.comparing(MediaType::getQualityValue)
                        .reversed()
                        .thenComparing(MimeType::isWildcardType))
                .flatMap(type ->
                        Stream.of(JSON, CSV, XLSX).filter(format -> type.includes(MediaType.parseMediaType(format))))
                .findFirst()
                .map(FORMATS::get)
                .orElse(AuditExports.Format.JSON);
    }

    @Needs(Act.AUDIT)
    @GetMapping("/exposures")
    Page<Exposure> exposures(Caller caller) {
        return Page.whole(exposures.list(caller));
    }
}
