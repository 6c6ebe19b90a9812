package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.DriveLogPolicy;
import org.bayhold.support.OnPostgres;

class DriveLogPolicyOnPostgresTest extends DriveLogPolicy implements OnPostgres {}
