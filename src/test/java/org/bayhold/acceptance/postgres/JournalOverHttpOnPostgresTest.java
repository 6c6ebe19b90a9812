package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.JournalOverHttp;
import org.bayhold.support.OnPostgres;

class JournalOverHttpOnPostgresTest extends JournalOverHttp implements OnPostgres {}
