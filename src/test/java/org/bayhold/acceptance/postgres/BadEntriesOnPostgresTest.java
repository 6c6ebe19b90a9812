package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.BadEntries;
import org.bayhold.support.OnPostgres;

class BadEntriesOnPostgresTest extends BadEntries implements OnPostgres {}
