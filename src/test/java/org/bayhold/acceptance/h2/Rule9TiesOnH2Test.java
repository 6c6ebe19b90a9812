package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule9Ties;
import org.bayhold.support.OnH2;

class Rule9TiesOnH2Test extends Rule9Ties implements OnH2 {}
