package org.bayhold.drivelog;

/** What the log cannot show because something is not logged or not on record; no verdict hangs on it. {@code docs/drive-log.md, D15}. */
public enum Unjudged {
    ERROR_OVER_FLOW,
    OTHER_BANK,
    MIXTURE_AT_FULL_LOAD,
    BOOST,
    KNOCK,
    INJECTOR_DUTY,
    AIRFLOW_SENSOR
}
