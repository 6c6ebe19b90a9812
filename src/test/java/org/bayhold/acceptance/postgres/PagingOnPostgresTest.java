package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Paging;
import org.bayhold.support.OnPostgres;

class PagingOnPostgresTest extends Paging implements OnPostgres {}
