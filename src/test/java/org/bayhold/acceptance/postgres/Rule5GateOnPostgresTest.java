package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule5Gate;
import org.bayhold.support.OnPostgres;

class Rule5GateOnPostgresTest extends Rule5Gate implements OnPostgres {}
