package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.AuditOverHttp;
import org.bayhold.support.OnH2;

class AuditOverHttpOnH2Test extends AuditOverHttp implements OnH2 {}
