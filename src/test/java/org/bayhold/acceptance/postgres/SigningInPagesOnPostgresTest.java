package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.SigningInPages;
import org.bayhold.support.OnPostgres;

class SigningInPagesOnPostgresTest extends SigningInPages implements OnPostgres {}
