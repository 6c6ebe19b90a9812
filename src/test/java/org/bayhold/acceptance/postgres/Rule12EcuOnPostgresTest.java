package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule12Ecu;
import org.bayhold.support.OnPostgres;

class Rule12EcuOnPostgresTest extends Rule12Ecu implements OnPostgres {}
