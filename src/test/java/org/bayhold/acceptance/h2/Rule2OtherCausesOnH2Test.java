package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule2OtherCauses;
import org.bayhold.support.OnH2;

class Rule2OtherCausesOnH2Test extends Rule2OtherCauses implements OnH2 {}
