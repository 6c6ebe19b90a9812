package org.bayhold.gate;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** The release certificate to print. */
@Controller
class CertificateController {
    private final Certificates certificates;

    CertificateController(Certificates certificates) {
        this.certificates = certificates;
    }

    @Needs(Act.READ)
    @Operation // a page, but one that the API's answers name
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(type = "string")))
    @GetMapping(
            path = {"/api/v1/handoffs/{id}/certificate", "/handoffs/{id}/certificate"},
            produces = MediaType.TEXT_HTML_VALUE)
    ModelAndView certificate(Caller caller, @PathVariable UUID id) {
        // the QR code leads people to the page, whoever printed it
        String address = ServletUriComponentsBuilder.fromCurrentContextPath()
                .path(HandoffViews.certificatePage(id))
                .toUriString();
        return new ModelAndView("certificate", "certificate", certificates.of(id, caller, address));
    }
}
