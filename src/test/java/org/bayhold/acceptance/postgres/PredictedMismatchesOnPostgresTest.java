package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.PredictedMismatches;
import org.bayhold.support.OnPostgres;

class PredictedMismatchesOnPostgresTest extends PredictedMismatches implements OnPostgres {}
