package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Tokens;
import org.bayhold.support.OnH2;

class TokensOnH2Test extends Tokens implements OnH2 {}
