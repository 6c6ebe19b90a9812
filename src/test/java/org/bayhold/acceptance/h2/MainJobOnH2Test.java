package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.MainJob;
import org.bayhold.support.OnH2;

class MainJobOnH2Test extends MainJob implements OnH2 {}
