package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Backstops;
import org.bayhold.support.OnH2;

class BackstopsOnH2Test extends Backstops implements OnH2 {}
