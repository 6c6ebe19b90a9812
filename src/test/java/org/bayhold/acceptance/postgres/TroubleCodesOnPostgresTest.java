package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.TroubleCodes;
import org.bayhold.support.OnPostgres;

class TroubleCodesOnPostgresTest extends TroubleCodes implements OnPostgres {}
