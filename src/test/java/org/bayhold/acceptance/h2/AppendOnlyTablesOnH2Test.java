package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.AppendOnlyTables;
import org.bayhold.support.OnH2;

class AppendOnlyTablesOnH2Test extends AppendOnlyTables implements OnH2 {}
