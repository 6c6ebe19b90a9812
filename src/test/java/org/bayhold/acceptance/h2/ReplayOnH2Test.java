package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Replay;
import org.bayhold.support.OnH2;

class ReplayOnH2Test extends Replay implements OnH2 {}
