package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule6Exceptions;
import org.bayhold.support.OnPostgres;

class Rule6ExceptionsOnPostgresTest extends Rule6Exceptions implements OnPostgres {}
