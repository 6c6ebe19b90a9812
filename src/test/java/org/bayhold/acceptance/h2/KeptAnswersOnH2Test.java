package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.KeptAnswers;
import org.bayhold.support.OnH2;

class KeptAnswersOnH2Test extends KeptAnswers implements OnH2 {}
