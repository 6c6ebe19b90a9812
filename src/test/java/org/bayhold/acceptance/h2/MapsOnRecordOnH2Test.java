package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.MapsOnRecord;
import org.bayhold.support.OnH2;

class MapsOnRecordOnH2Test extends MapsOnRecord implements OnH2 {}
