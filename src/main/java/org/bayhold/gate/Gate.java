package org.bayhold.gate;

import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The decision whether a car may leave: a function of the record alone. docs/rules.md, rule 5. */
public final class Gate {
    /** Goes up whenever the list of checks, or what one of them means, changes; stored with every decision. */
    public static final int RULES = 3;

    private static final Logger LOG = LoggerFactory.getLogger(Gate.class);

    private Gate() {}

    public static Decision decide(Question question) {
        return decide(question, RULES);
    }

    /** As an earlier version of the rules would have it. */
    static Decision decide(Question question, int rules) {
        return decide(question, rules, Checks.of(rules));
    }

    static Decision decide(Question question, int rules, List<Checks.Named> checks) {
        List<CheckResult> results =
                checks.stream().map(check -> run(check, question)).toList();
        List<CheckResult> failed = results.stream().filter(CheckResult::failed).toList();
        boolean clear = failed.isEmpty();
        return new Decision(
                rules,
                question.car().effectiveAt(),
                question.car().knownAt(),
                clear ? Decision.Verdict.CLEAR : Decision.Verdict.HOLD,
                clear ? null : Risks.of(question, failed),
                results,
                question.gaps(),
                null,
                question.car());
    }

    /** A check that cannot run fails: an error never opens the gate. */
    static CheckResult run(Checks.Named check, Question question) {
        try {
            return check.check().apply(question);
        } catch (RuntimeException e) {
            LOG.error("the check {} did not run", check.code(), e);
            return CheckResult.fail(check.code(), Reason.CHECK_DID_NOT_RUN);
        }
    }
}
