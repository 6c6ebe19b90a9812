package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.RealInput;
import org.bayhold.support.OnPostgres;

class RealInputOnPostgresTest extends RealInput implements OnPostgres {}
