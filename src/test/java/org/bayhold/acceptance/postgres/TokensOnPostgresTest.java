package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Tokens;
import org.bayhold.support.OnPostgres;

class TokensOnPostgresTest extends Tokens implements OnPostgres {}
