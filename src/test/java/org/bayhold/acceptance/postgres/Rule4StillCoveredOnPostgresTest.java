package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule4StillCovered;
import org.bayhold.support.OnPostgres;

class Rule4StillCoveredOnPostgresTest extends Rule4StillCovered implements OnPostgres {}
