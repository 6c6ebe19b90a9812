package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule1AnyChangeOpens;
import org.bayhold.support.OnH2;

class Rule1AnyChangeOpensOnH2Test extends Rule1AnyChangeOpens implements OnH2 {}
