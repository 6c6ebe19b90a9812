package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule1AnyChangeOpens;
import org.bayhold.support.OnPostgres;

class Rule1AnyChangeOpensOnPostgresTest extends Rule1AnyChangeOpens implements OnPostgres {}
