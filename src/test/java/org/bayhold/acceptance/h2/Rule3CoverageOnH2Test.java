package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule3Coverage;
import org.bayhold.support.OnH2;

class Rule3CoverageOnH2Test extends Rule3Coverage implements OnH2 {}
