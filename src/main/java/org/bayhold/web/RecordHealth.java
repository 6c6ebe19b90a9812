package org.bayhold.web;

import org.bayhold.journal.Standing;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** A server whose record is broken is out of service and takes no traffic; it is alive, and a restart does not mend it. */
@Component("recordHealthIndicator")
class RecordHealth implements HealthIndicator {
    private final Standing standing;

    RecordHealth(Standing standing) {
        this.standing = standing;
    }

    @Override
    public Health health() {
        return standing.broken().isPresent()
                ? Health.outOfService().build()
                : Health.up().build();
    }
}
