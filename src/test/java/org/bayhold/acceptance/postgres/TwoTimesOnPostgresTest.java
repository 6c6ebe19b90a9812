package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.TwoTimes;
import org.bayhold.support.OnPostgres;

class TwoTimesOnPostgresTest extends TwoTimes implements OnPostgres {}
