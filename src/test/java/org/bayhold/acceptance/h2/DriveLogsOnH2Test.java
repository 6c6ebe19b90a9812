package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.DriveLogs;
import org.bayhold.support.OnH2;

class DriveLogsOnH2Test extends DriveLogs implements OnH2 {}
