package org.bayhold.drives;

import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.Thresholds;

/** A judgement with everything that it was made from but the file. */
public record Judged(EngineFacts engine, Thresholds thresholds, Judgement judgement) {}
