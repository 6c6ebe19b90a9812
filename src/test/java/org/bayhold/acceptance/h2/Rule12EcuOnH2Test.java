package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule12Ecu;
import org.bayhold.support.OnH2;

class Rule12EcuOnH2Test extends Rule12Ecu implements OnH2 {}
