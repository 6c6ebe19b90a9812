package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule10FactoryBaseline;
import org.bayhold.support.OnH2;

class Rule10FactoryBaselineOnH2Test extends Rule10FactoryBaseline implements OnH2 {}
