package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.PolicyOnAPage;
import org.bayhold.support.OnH2;

class PolicyOnAPageOnH2Test extends PolicyOnAPage implements OnH2 {}
