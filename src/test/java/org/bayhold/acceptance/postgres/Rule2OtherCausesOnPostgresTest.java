package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule2OtherCauses;
import org.bayhold.support.OnPostgres;

class Rule2OtherCausesOnPostgresTest extends Rule2OtherCauses implements OnPostgres {}
