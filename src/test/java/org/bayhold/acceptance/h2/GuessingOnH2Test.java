package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Guessing;
import org.bayhold.support.OnH2;

class GuessingOnH2Test extends Guessing implements OnH2 {}
