package org.bayhold.gate;

import org.bayhold.support.OnPostgres;

class DecisionsOfManyCarsOnPostgresTest extends DecisionsOfManyCars implements OnPostgres {}
