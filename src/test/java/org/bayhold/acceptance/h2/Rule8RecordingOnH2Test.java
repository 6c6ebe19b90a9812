package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule8Recording;
import org.bayhold.support.OnH2;

class Rule8RecordingOnH2Test extends Rule8Recording implements OnH2 {}
