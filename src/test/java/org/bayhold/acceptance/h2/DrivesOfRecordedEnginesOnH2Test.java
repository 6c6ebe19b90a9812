package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.DrivesOfRecordedEngines;
import org.bayhold.support.OnH2;

class DrivesOfRecordedEnginesOnH2Test extends DrivesOfRecordedEngines implements OnH2 {}
