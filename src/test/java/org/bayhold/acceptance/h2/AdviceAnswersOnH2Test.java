package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.AdviceAnswers;
import org.bayhold.support.OnH2;

class AdviceAnswersOnH2Test extends AdviceAnswers implements OnH2 {}
