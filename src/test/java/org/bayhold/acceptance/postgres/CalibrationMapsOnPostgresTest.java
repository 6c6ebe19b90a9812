package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.CalibrationMaps;
import org.bayhold.support.OnPostgres;

class CalibrationMapsOnPostgresTest extends CalibrationMaps implements OnPostgres {}
