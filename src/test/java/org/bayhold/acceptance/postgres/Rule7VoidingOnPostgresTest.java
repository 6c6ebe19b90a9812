package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule7Voiding;
import org.bayhold.support.OnPostgres;

class Rule7VoidingOnPostgresTest extends Rule7Voiding implements OnPostgres {}
