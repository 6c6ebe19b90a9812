package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.DrivesOfRecordedEngines;
import org.bayhold.support.OnPostgres;

class DrivesOfRecordedEnginesOnPostgresTest extends DrivesOfRecordedEngines implements OnPostgres {}
