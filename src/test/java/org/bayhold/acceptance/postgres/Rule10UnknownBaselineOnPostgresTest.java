package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule10UnknownBaseline;
import org.bayhold.support.OnPostgres;

class Rule10UnknownBaselineOnPostgresTest extends Rule10UnknownBaseline implements OnPostgres {}
