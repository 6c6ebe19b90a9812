package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule11Withdrawal;
import org.bayhold.support.OnH2;

class Rule11WithdrawalOnH2Test extends Rule11Withdrawal implements OnH2 {}
