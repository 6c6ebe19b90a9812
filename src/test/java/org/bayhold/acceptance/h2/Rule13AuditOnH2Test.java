package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule13Audit;
import org.bayhold.support.OnH2;

class Rule13AuditOnH2Test extends Rule13Audit implements OnH2 {}
