package org.bayhold.race;

import java.util.Map;
import java.util.TreeMap;
import org.bayhold.support.Answer;

/** How many of each kind of write got which answer. */
final class Tally {
    private final Map<String, Integer> counts = new TreeMap<>();
    private final Map<String, String> serverErrors = new TreeMap<>();
    private int writes;

    synchronized void count(String what, Answer answer) {
        writes++;
        counts.merge(what + " " + answer.status(), 1, Integer::sum);
        if (answer.status() >= 500) {
            serverErrors.putIfAbsent(what + " " + answer.status(), answer.toString());
        }
    }

    synchronized int writes() {
        return writes;
    }

    /** One of each. */
    synchronized Map<String, String> serverErrors() {
        return Map.copyOf(serverErrors);
    }

    @Override
    public synchronized String toString() {
        return writes + " writes " + counts;
    }
}
