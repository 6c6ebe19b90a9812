package org.bayhold.audit;

import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.PriorityQueue;
import java.util.TreeMap;

/**
 * What a page tells of an audit: how many, in which months, and the rows that somebody has to answer for. It keeps a bounded
 * number of rows, however many it is told of; the exports have them all.
 */
final class AuditSummary implements AuditRows {
    private static final int MOST_STILL = 200;
    private static final int MOST_FOUND = 200;
    /** What stands on the page when there is not room for all: without a match for the longest time, or found last. */
    private static final Comparator<AuditedHandoff> LONGEST =
            Comparator.comparing(row -> Objects.requireNonNull(row.stillUnmatchedSince()));

    private static final Comparator<AuditedHandoff> LATEST =
            Comparator.comparing(AuditedHandoff::handedOffAt).reversed();

    private final ZoneId zone;
    private final PriorityQueue<AuditedHandoff> still = new PriorityQueue<>(LONGEST.reversed());
    private final PriorityQueue<AuditedHandoff> found = new PriorityQueue<>(LATEST.reversed());
    private final Map<YearMonth, Month> months = new TreeMap<>();
    private int handoffs;
    private int unmatched;
    private int stillUnmatched;
    private int withFindings;

    AuditSummary(ZoneId zone) {
        this.zone = zone;
    }

    /** One month's handovers: how many were unmatched at some time on the road, and how often each finding was made. */
    static final class Month {
        private final Map<Finding, Integer> findings = new EnumMap<>(Finding.class);
        private int handoffs;
        private int unmatched;

        public int handoffs() {
            return handoffs;
        }

        public int unmatched() {
            return unmatched;
        }

        public int of(Finding finding) {
            return findings.getOrDefault(finding, 0);
        }
    }

    @Override
    public void add(AuditedHandoff row) {
        Month month = months.computeIfAbsent(YearMonth.from(row.handedOffAt().atZone(zone)), key -> new Month());
        handoffs++;
        month.handoffs++;
        row.findings().forEach(finding -> month.findings.merge(finding, 1, Integer::sum));
        if (row.unmatchedSince() != null) {
            unmatched++;
            month.unmatched++;
        }
        if (row.stillUnmatchedSince() != null) {
            stillUnmatched++;
            keep(still, row, MOST_STILL);
        } else if (!row.findings().isEmpty() || row.unmatchedSince() != null) {
            withFindings++;
            keep(found, row, MOST_FOUND);
        }
    }

    private static void keep(PriorityQueue<AuditedHandoff> kept, AuditedHandoff row, int most) {
        kept.add(row);
        if (kept.size() > most) {
            AuditedHandoff ignored = kept.remove();
        }
    }

    /** Still on the road without a match, the longest first. */
    public List<AuditedHandoff> still() {
        return sorted(still, LONGEST);
    }

    /** The others that have a finding, or were without a match for a while; the latest first. */
    public List<AuditedHandoff> found() {
        return sorted(found, LATEST);
    }

    private static List<AuditedHandoff> sorted(PriorityQueue<AuditedHandoff> kept, Comparator<AuditedHandoff> order) {
        List<AuditedHandoff> list = new ArrayList<>(kept);
        list.sort(order);
        return list;
    }

    public Map<YearMonth, Month> months() {
        return months;
    }

    public int handoffs() {
        return handoffs;
    }

    public int unmatched() {
        return unmatched;
    }

    public int stillUnmatched() {
        return stillUnmatched;
    }

    public int withFindings() {
        return withFindings;
    }

    /** Of which nothing can be said but that they were right. */
    public int quiet() {
        return handoffs - stillUnmatched - withFindings;
    }
}
