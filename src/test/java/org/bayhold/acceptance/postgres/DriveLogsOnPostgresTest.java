package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.DriveLogs;
import org.bayhold.support.OnPostgres;

class DriveLogsOnPostgresTest extends DriveLogs implements OnPostgres {}
