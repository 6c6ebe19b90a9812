package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Backstops;
import org.bayhold.support.OnPostgres;

class BackstopsOnPostgresTest extends Backstops implements OnPostgres {}
