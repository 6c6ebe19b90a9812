package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Replay;
import org.bayhold.support.OnPostgres;

class ReplayOnPostgresTest extends Replay implements OnPostgres {}
