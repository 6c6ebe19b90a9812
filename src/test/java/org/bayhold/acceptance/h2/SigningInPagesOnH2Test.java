package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.SigningInPages;
import org.bayhold.support.OnH2;

class SigningInPagesOnH2Test extends SigningInPages implements OnH2 {}
