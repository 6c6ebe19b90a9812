package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.CalibrationMapPages;
import org.bayhold.support.OnPostgres;

class CalibrationMapPagesOnPostgresTest extends CalibrationMapPages implements OnPostgres {}
