package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.BadEntries;
import org.bayhold.support.OnH2;

class BadEntriesOnH2Test extends BadEntries implements OnH2 {}
