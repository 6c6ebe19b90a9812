package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule4Flashed;
import org.bayhold.support.OnH2;

class Rule4FlashedOnH2Test extends Rule4Flashed implements OnH2 {}
