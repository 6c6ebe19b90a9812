package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Rule6Exceptions;
import org.bayhold.support.OnH2;

class Rule6ExceptionsOnH2Test extends Rule6Exceptions implements OnH2 {}
