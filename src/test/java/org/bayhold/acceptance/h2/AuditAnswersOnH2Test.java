package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.AuditAnswers;
import org.bayhold.support.OnH2;

class AuditAnswersOnH2Test extends AuditAnswers implements OnH2 {}
