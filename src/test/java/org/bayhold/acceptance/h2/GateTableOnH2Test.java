package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.GateTable;
import org.bayhold.support.OnH2;

class GateTableOnH2Test extends GateTable implements OnH2 {}
