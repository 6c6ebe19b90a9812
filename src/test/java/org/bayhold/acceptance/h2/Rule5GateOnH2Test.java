package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule5Gate;
import org.bayhold.support.OnH2;

class Rule5GateOnH2Test extends Rule5Gate implements OnH2 {}
