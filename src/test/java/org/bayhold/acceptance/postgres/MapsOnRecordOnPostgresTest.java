package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.MapsOnRecord;
import org.bayhold.support.OnPostgres;

class MapsOnRecordOnPostgresTest extends MapsOnRecord implements OnPostgres {}
