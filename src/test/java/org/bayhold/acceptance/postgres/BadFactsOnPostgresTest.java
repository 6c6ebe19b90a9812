package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.BadFacts;
import org.bayhold.support.OnPostgres;

class BadFactsOnPostgresTest extends BadFacts implements OnPostgres {}
