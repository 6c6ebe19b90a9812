package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Preconditions;
import org.bayhold.support.OnH2;

class PreconditionsOnH2Test extends Preconditions implements OnH2 {}
