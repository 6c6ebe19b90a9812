package org.bayhold.audit;

import java.io.Closeable;

/** A file of rows that is written as it grows; closing it ends it, an error leaves it without its end. */
interface ExportRows extends AuditRows, Closeable {}
