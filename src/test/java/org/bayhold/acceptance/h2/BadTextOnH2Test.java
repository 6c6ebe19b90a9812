package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.BadText;
import org.bayhold.support.OnH2;

class BadTextOnH2Test extends BadText implements OnH2 {}
