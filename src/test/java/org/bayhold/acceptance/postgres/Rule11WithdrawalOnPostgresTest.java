package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule11Withdrawal;
import org.bayhold.support.OnPostgres;

class Rule11WithdrawalOnPostgresTest extends Rule11Withdrawal implements OnPostgres {}
