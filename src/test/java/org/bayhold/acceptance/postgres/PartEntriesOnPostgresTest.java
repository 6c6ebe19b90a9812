package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.PartEntries;
import org.bayhold.support.OnPostgres;

class PartEntriesOnPostgresTest extends PartEntries implements OnPostgres {}
