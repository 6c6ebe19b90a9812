package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.BadText;
import org.bayhold.support.OnPostgres;

class BadTextOnPostgresTest extends BadText implements OnPostgres {}
