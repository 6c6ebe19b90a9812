package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule9Ties;
import org.bayhold.support.OnPostgres;

class Rule9TiesOnPostgresTest extends Rule9Ties implements OnPostgres {}
