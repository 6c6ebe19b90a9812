package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.DriveLogPolicy;
import org.bayhold.support.OnH2;

class DriveLogPolicyOnH2Test extends DriveLogPolicy implements OnH2 {}
