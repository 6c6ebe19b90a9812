package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.CalibrationMaps;
import org.bayhold.support.OnH2;

class CalibrationMapsOnH2Test extends CalibrationMaps implements OnH2 {}
