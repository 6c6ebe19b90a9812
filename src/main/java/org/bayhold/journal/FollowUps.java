package org.bayhold.journal;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The work that is still to be done car by car. */
@Component
public class FollowUps {
    private final FollowUpRows rows;
    private final Standing standing;
    private final Clock clock;

    FollowUps(FollowUpRows rows, Standing standing, Clock clock) {
        this.rows = rows;
        this.standing = standing;
        this.clock = clock;
    }

    /** None while the record is broken: it is left as it is. */
    public List<FollowUp> open() {
        if (standing.broken().isPresent()) {
            return List.of();
        }
        return rows.open().stream().map(FollowUpRow::followUp).toList();
    }

    public List<FollowUp> openOf(UUID subjectId) {
        return rows.openOf(subjectId).stream().map(FollowUpRow::followUp).toList();
    }

    @Transactional
    public void done(FollowUp followUp) {
        if (rows.done(followUp.id(), clock.instant().truncatedTo(ChronoUnit.MICROS)) != 1) {
            throw new IllegalStateException("no such follow-up: " + followUp.id());
        }
    }
}
