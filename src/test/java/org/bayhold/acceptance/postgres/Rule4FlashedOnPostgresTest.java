package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule4Flashed;
import org.bayhold.support.OnPostgres;

class Rule4FlashedOnPostgresTest extends Rule4Flashed implements OnPostgres {}
