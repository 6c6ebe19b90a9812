package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.TroubleCodePages;
import org.bayhold.support.OnH2;

class TroubleCodePagesOnH2Test extends TroubleCodePages implements OnH2 {}
