package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.TroubleCodePages;
import org.bayhold.support.OnPostgres;

class TroubleCodePagesOnPostgresTest extends TroubleCodePages implements OnPostgres {}
