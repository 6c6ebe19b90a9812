package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule4StillCovered;
import org.bayhold.support.OnH2;

class Rule4StillCoveredOnH2Test extends Rule4StillCovered implements OnH2 {}
