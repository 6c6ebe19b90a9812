package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Roles;
import org.bayhold.support.OnH2;

class RolesOnH2Test extends Roles implements OnH2 {}
