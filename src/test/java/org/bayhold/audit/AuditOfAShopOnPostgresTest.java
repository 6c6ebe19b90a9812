package org.bayhold.audit;

import org.bayhold.support.OnPostgres;

class AuditOfAShopOnPostgresTest extends AuditOfAShop implements OnPostgres {}
