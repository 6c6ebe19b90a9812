package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.Idempotency;
import org.bayhold.support.OnH2;

class IdempotencyOnH2Test extends Idempotency implements OnH2 {}
