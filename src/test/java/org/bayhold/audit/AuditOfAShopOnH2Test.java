package org.bayhold.audit;

import org.bayhold.support.OnH2;

class AuditOfAShopOnH2Test extends AuditOfAShop implements OnH2 {}
