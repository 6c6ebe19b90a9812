package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.CalibrationMapPages;
import org.bayhold.support.OnH2;

class CalibrationMapPagesOnH2Test extends CalibrationMapPages implements OnH2 {}
