package org.bayhold.acceptance.postgres;

import org.bayhold.acceptance.Rule8Recording;
import org.bayhold.support.OnPostgres;

class Rule8RecordingOnPostgresTest extends Rule8Recording implements OnPostgres {}
