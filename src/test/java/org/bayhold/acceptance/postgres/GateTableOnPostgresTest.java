package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.GateTable;
import org.bayhold.support.OnPostgres;

class GateTableOnPostgresTest extends GateTable implements OnPostgres {}
