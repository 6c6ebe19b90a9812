package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.RealInput;
import org.bayhold.support.OnH2;

class RealInputOnH2Test extends RealInput implements OnH2 {}
