package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule3Coverage;
import org.bayhold.support.OnPostgres;

class Rule3CoverageOnPostgresTest extends Rule3Coverage implements OnPostgres {}
