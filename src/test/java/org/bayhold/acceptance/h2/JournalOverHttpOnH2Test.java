package org.bayhold.acceptance.h2;

import org.bayhold.acceptance.JournalOverHttp;
import org.bayhold.support.OnH2;

class JournalOverHttpOnH2Test extends JournalOverHttp implements OnH2 {}
