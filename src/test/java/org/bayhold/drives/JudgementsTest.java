package org.bayhold.drives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.MadeLogs;
import org.bayhold.buildsheet.Stamp;
import org.bayhold.drivelog.DriveLogs;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.ReadRequest;
import org.bayhold.drivelog.RefusedLogException;
import org.bayhold.drivelog.SentLog;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drivelog.Verdict;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A judgement is read as it was kept, or not at all: docs/decisions/0014-drives.md. */
class JudgementsTest {
    private final JudgementRows rows = mock(JudgementRows.class);
    private final Judgements judgements = new Judgements(rows, new CanonicalJson());
    private Judged judged;
    private Judgements.Written written;
    private DriveLogged fact;

    @BeforeEach
    void aDriveThatWasJudged() throws IOException, RefusedLogException {
        judged = new Judged(
                EngineFacts.UNKNOWN,
                Thresholds.DEFAULTS,
                DriveLogs.judge(
                        new ByteArrayInputStream(SentLog.sound(1)),
                        ReadRequest.PLAIN,
                        EngineFacts.UNKNOWN,
                        Thresholds.DEFAULTS,
                        bytes -> {}));
        written = judgements.written(judged);
        UUID id = new UUID(1, 1);
        Stamp stamp = new Stamp(id, new UUID(1, 2), 7, Instant.EPOCH, Instant.EPOCH, new UUID(1, 3));
        fact = MadeLogs.log(stamp, null, null, null, Verdict.PASS, Fact.Source.SHOP, written.sha256());
    }

    private void isKept(String body) {
        UUID id = fact.stamp().id();
        when(rows.findById(id)).thenReturn(Optional.of(new JudgementRow(id, written.sha256(), body)));
    }

    @Test
    void allOfItComesBack() {
        isKept(written.body());

        // by what is kept: there a figure in a sentence is a number, whole or not
        assertThat(judgements.written(judgements.of(fact))).isEqualTo(written);
        assertThat(judgements.of(fact).judgement().trims())
                .isEqualTo(judged.judgement().trims());
    }

    @Test
    void oneThatIsNotWhatTheJournalSaysIsNotShown() {
        isKept(written.body().replaceFirst("\"PASS\"", "\"FAIL\""));

        assertThatThrownBy(() -> judgements.of(fact))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.code()).isEqualTo(Code.UNAVAILABLE));
    }

    @Test
    void noneAtAllIsNotShownEither() {
        assertThatThrownBy(() -> judgements.of(fact)).isInstanceOf(Refusal.class);
    }
}
