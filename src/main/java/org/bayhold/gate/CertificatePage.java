package org.bayhold.gate;

import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** The release certificate for whoever is signed in to the pages, to be printed. */
@Controller
class CertificatePage {
    private final Certificates certificates;

    CertificatePage(Certificates certificates) {
        this.certificates = certificates;
    }

    @Needs(Act.READ)
    @GetMapping("/handovers/{id}/certificate")
    ModelAndView certificate(Caller caller, @PathVariable UUID id) {
        String address =
                ServletUriComponentsBuilder.fromCurrentRequestUri().build().toUriString();
        return new ModelAndView("certificate", "certificate", certificates.of(id, caller, address));
    }
}
