package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Exposure;
import org.bayhold.support.OnH2;

class ExposureOnH2Test extends Exposure implements OnH2 {}
