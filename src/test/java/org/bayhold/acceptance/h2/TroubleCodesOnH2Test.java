package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.TroubleCodes;
import org.bayhold.support.OnH2;

class TroubleCodesOnH2Test extends TroubleCodes implements OnH2 {}
