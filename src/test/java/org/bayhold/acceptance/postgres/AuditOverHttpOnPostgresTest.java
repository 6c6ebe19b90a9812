package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.AuditOverHttp;
import org.bayhold.support.OnPostgres;

class AuditOverHttpOnPostgresTest extends AuditOverHttp implements OnPostgres {}
