package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.PredictedMismatches;
import org.bayhold.support.OnH2;

class PredictedMismatchesOnH2Test extends PredictedMismatches implements OnH2 {}
