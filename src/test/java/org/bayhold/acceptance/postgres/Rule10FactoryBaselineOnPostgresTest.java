package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule10FactoryBaseline;
import org.bayhold.support.OnPostgres;

class Rule10FactoryBaselineOnPostgresTest extends Rule10FactoryBaseline implements OnPostgres {}
