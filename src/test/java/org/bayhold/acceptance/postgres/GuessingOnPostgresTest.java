package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Guessing;
import org.bayhold.support.OnPostgres;

class GuessingOnPostgresTest extends Guessing implements OnPostgres {}
