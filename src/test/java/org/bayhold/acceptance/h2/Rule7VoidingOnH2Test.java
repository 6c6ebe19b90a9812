package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule7Voiding;
import org.bayhold.support.OnH2;

class Rule7VoidingOnH2Test extends Rule7Voiding implements OnH2 {}
