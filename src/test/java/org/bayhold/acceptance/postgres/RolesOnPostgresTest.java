package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Roles;
import org.bayhold.support.OnPostgres;

class RolesOnPostgresTest extends Roles implements OnPostgres {}
