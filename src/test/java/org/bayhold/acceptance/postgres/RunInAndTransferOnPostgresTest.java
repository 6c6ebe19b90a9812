package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.RunInAndTransfer;
import org.bayhold.support.OnPostgres;

class RunInAndTransferOnPostgresTest extends RunInAndTransfer implements OnPostgres {}
