package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Idempotency;
import org.bayhold.support.OnPostgres;

class IdempotencyOnPostgresTest extends Idempotency implements OnPostgres {}
