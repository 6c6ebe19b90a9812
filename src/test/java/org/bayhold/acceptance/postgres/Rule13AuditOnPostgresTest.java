package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule13Audit;
import org.bayhold.support.OnPostgres;

class Rule13AuditOnPostgresTest extends Rule13Audit implements OnPostgres {}
