package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.PartEntries;
import org.bayhold.support.OnH2;

class PartEntriesOnH2Test extends PartEntries implements OnH2 {}
