package org.bayhold.audit;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.Set;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.page.SiteTime;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Audit</i>: which cars left without a matching calibration, and which of them are still on the road so. */
@Controller
class AuditPages {
    private static final int MONTHS_SHOWN_AT_FIRST = 3;

    private final HandoffAudit audit;
    private final AuditExports exports;
    private final Exposures exposures;
    private final SiteTime time;
    private final Clock clock;

    AuditPages(HandoffAudit audit, AuditExports exports, Exposures exposures, SiteTime time, Clock clock) {
        this.audit = audit;
        this.exports = exports;
        this.exposures = exposures;
        this.time = time;
        this.clock = clock;
    }

    /** The filters are the address, so that it can be passed on. */
    @Needs(Act.AUDIT)
    @GetMapping("/audit")
    ModelAndView audit(Form form, HttpServletRequest request) {
        if (request.getQueryString() == null) {
            LocalDate today = LocalDate.ofInstant(clock.instant(), time.zone());
            form.with("from", today.minusMonths(MONTHS_SHOWN_AT_FIRST));
        }
        AuditSummary summary = new AuditSummary(time.zone());
        ModelAndView page = form.submit("audit/audit", () -> {
            AuditQuestion question = question(form);
            form.check();
            audit.tell(audit.ready(question), summary);
            return form.show("audit/audit");
        });
        String query = request.getQueryString();
        return page.addObject("summary", summary)
                .addObject("picture", MonthPicture.of(summary.months()))
                .addObject("findings", Finding.values())
                .addObject("query", query == null ? "?from=" + form.value("from") : "?" + query);
    }

    @Needs(Act.AUDIT)
    @GetMapping("/audit/handovers.csv")
    void csv(Form form, HttpServletResponse response) throws IOException {
        AuditQuestion question = question(form);
        form.check();
        exports.send(question, AuditExports.Format.CSV, response);
    }

    @Needs(Act.AUDIT)
    @GetMapping("/audit/handovers.xlsx")
    void xlsx(Form form, HttpServletResponse response) throws IOException {
        AuditQuestion question = question(form);
        form.check();
        exports.send(question, AuditExports.Format.XLSX, response);
    }

    /** Whom to call: cars on the road now without a matching calibration. */
    @Needs(Act.AUDIT)
    @GetMapping("/audit/on-the-road")
    ModelAndView onTheRoad(Caller caller) {
        return new ModelAndView("audit/on-the-road").addObject("cars", exposures.list(caller));
    }

    private AuditQuestion question(Form form) {
        Set<Finding> findings = EnumSet.noneOf(Finding.class);
        findings.addAll(form.choices("finding", Finding.class));
        LocalDate from = form.date("from");
        if (from != null && from.isAfter(LocalDate.ofInstant(clock.instant(), time.zone()))) {
            throw Refusal.invalid("from", "audit.from-ahead");
        }
        LocalDate to = form.date("to");
        return new AuditQuestion(
                startOf(from),
                to == null ? null : startOf(to.plusDays(1)),
                findings,
                null,
                form.text("person"),
                form.checked("unmatched") ? Boolean.TRUE : null,
                null,
                null,
                null);
    }

    private @Nullable Instant startOf(@Nullable LocalDate day) {
        return day == null
                ? null
                : day.atTime(LocalTime.MIN).atZone(time.zone()).toInstant();
    }
}
