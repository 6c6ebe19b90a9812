package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Exposure;
import org.bayhold.support.OnPostgres;

class ExposureOnPostgresTest extends Exposure implements OnPostgres {}
