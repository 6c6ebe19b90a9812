package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.AuditAnswers;
import org.bayhold.support.OnPostgres;

class AuditAnswersOnPostgresTest extends AuditAnswers implements OnPostgres {}
