package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.ReadersUnits;
import org.bayhold.support.OnPostgres;

class ReadersUnitsOnPostgresTest extends ReadersUnits implements OnPostgres {}
