package org.bayhold.gate;

import org.bayhold.support.OnH2;

class DecisionsOfManyCarsOnH2Test extends DecisionsOfManyCars implements OnH2 {}
