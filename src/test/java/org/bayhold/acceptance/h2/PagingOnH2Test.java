package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Paging;
import org.bayhold.support.OnH2;

class PagingOnH2Test extends Paging implements OnH2 {}
