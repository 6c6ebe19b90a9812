package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.TwoTimes;
import org.bayhold.support.OnH2;

class TwoTimesOnH2Test extends TwoTimes implements OnH2 {}
