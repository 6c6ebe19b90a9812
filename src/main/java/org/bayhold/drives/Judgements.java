package org.bayhold.drives;

import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Hashing;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/** What drives showed, as it is kept. */
@Component
class Judgements {
    private static final Logger LOG = LoggerFactory.getLogger(Judgements.class);

    private final JudgementRows rows;
    private final CanonicalJson json;

    Judgements(JudgementRows rows, CanonicalJson json) {
        this.rows = rows;
        this.json = json;
    }

    /** @param sha256 of {@code body} */
    record Written(String body, String sha256) {}

    Written written(Judged judged) {
        String body = json.write(judged);
        return new Written(body, Hashing.sha256(body));
    }

    void keep(DriveLogged fact, Written written) {
        rows.save(new JudgementRow(fact.stamp().id(), written.sha256(), written.body()));
    }

    /** @throws Refusal UNAVAILABLE where what is kept is not what the journal says */
    Judged of(DriveLogged fact) {
        String body = rows.findById(fact.stamp().id())
                .map(JudgementRow::body)
                .filter(kept -> Hashing.sha256(kept).equals(fact.judgementSha256()))
                .orElseThrow(() -> differs(fact));
        return json.read(body, Judged.class);
    }

    private static Refusal differs(DriveLogged fact) {
        LOG.error(
                "the judgement of {} is not what the journal says", fact.stamp().id());
        return Refusal.of(Code.UNAVAILABLE, "drive-log.judgement-differs");
    }
}
