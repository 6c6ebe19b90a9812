package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.BadFacts;
import org.bayhold.support.OnH2;

class BadFactsOnH2Test extends BadFacts implements OnH2 {}
