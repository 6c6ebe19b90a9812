package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.AdviceAnswers;
import org.bayhold.support.OnPostgres;

class AdviceAnswersOnPostgresTest extends AdviceAnswers implements OnPostgres {}
