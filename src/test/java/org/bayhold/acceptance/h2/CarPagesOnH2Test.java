package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.CarPages;
import org.bayhold.support.OnH2;

class CarPagesOnH2Test extends CarPages implements OnH2 {}
