package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.KeptAnswers;
import org.bayhold.support.OnPostgres;

class KeptAnswersOnPostgresTest extends KeptAnswers implements OnPostgres {}
