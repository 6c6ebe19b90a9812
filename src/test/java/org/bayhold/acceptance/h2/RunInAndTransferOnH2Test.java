package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.RunInAndTransfer;
import org.bayhold.support.OnH2;

class RunInAndTransferOnH2Test extends RunInAndTransfer implements OnH2 {}
