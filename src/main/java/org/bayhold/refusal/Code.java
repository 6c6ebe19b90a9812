package org.bayhold.refusal;

/** The kinds of refusal that a caller can tell apart, with their HTTP status. */
public enum Code {
    INVALID(400),
    UNAUTHENTICATED(401),
    FORBIDDEN(403),
    NOT_FOUND(404),
    METHOD_NOT_ALLOWED(405),
    NOT_ACCEPTABLE(406),
    CONFLICT(409),
    GATE_HOLD(409),
    EVIDENCE_MISSING(409),
    STALE(412),
    TOO_LARGE(413),
    UNSUPPORTED(415),
    IDEMPOTENCY_MISMATCH(422),
    PRECONDITION_REQUIRED(428),
    TOO_MANY_REQUESTS(429),
    INTERNAL(500),
    UNAVAILABLE(503);

    private final int status;

    Code(int status) {
        this.status = status;
    }

    public int status() {
        return status;
    }

    /** As it stands in a problem's type: {@code gate-hold}. */
    public String slug() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
}
