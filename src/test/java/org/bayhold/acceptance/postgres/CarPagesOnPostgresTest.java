package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.CarPages;
import org.bayhold.support.OnPostgres;

class CarPagesOnPostgresTest extends CarPages implements OnPostgres {}
