package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule10UnknownBaseline;
import org.bayhold.support.OnH2;

class Rule10UnknownBaselineOnH2Test extends Rule10UnknownBaseline implements OnH2 {}
