package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Preconditions;
import org.bayhold.support.OnPostgres;

class PreconditionsOnPostgresTest extends Preconditions implements OnPostgres {}
