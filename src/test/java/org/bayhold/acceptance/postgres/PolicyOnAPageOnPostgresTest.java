package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.PolicyOnAPage;
import org.bayhold.support.OnPostgres;

class PolicyOnAPageOnPostgresTest extends PolicyOnAPage implements OnPostgres {}
