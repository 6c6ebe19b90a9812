package org.bayhold.identity;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** Failed sign-ins in a row of one name or one address. */
@Entity
@Table(name = "sign_in_failure")
class SignInFailureRow {
    @Id
    private String subject;

    private int failures;
    private Instant blockedTo;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected SignInFailureRow() {}

    SignInFailureRow(String subject, int failures, Instant blockedTo) {
        this.subject = subject;
        this.failures = failures;
        this.blockedTo = blockedTo;
    }

    String subject() {
        return subject;
    }

    int failures() {
        return failures;
    }

    Instant blockedTo() {
        return blockedTo;
    }
}
