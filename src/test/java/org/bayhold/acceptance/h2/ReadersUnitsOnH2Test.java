package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.ReadersUnits;
import org.bayhold.support.OnH2;

class ReadersUnitsOnH2Test extends ReadersUnits implements OnH2 {}
