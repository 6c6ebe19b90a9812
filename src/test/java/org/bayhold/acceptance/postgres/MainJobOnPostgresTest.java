package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.MainJob;
import org.bayhold.support.OnPostgres;

class MainJobOnPostgresTest extends MainJob implements OnPostgres {}
