package org.bayhold.journal;

import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.refusal.Refusal;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.test.util.ReflectionTestUtils;
import org.springframework.transaction.PlatformTransactionManager;
import tools.jackson.databind.json.JsonMapper;

/** The write template with one of its steps taken out. */
public final class BrokenTemplate extends WriteTemplate {
    private final EntityManager entityManager;
    private final ChainHeads heads;
    private final BrokenDatabase database;
    private volatile Fault fault = Fault.NONE;

    BrokenTemplate(
            PlatformTransactionManager transactions,
            EntityManager entityManager,
            ChainHeads heads,
            JournalEntries entries,
            IdempotencyRows answers,
            PersonalData personalData,
            FollowUpRows followUps,
            BrokenDatabase database,
            Standing standing,
            CanonicalJson json,
            JsonMapper answerMapper,
            Clock clock) {
        super(
                transactions,
                entityManager,
                heads,
                entries,
                answers,
                personalData,
                followUps,
                database,
                standing,
                json,
                answerMapper,
                clock);
        this.entityManager = entityManager;
        this.heads = heads;
        this.database = database;
    }

    /** Takes the place of the template in an application that is about to start. */
    public static void insteadOfTheTemplate(GenericApplicationContext application) {
        application.registerBean(BrokenDatabase.class, bean -> bean.setPrimary(true));
        application.registerBean(BrokenTemplate.class, bean -> bean.setPrimary(true));
    }

    public Fault fault() {
        return fault;
    }

    public void breakAt(Fault broken) {
        this.fault = broken;
        database.breakAt(broken);
    }

    @Override
    ChainHead lock(UUID chainId) {
        database.takeTimeAlready();
        return switch (fault) {
            case NONE, NOTHING_HELD -> super.lock(chainId);
            case NO_FIRST_STEP -> {
                ChainHead head = asItIs(chainId);
                ReflectionTestUtils.setField(head, "seq", head.seq() + 1);
                yield head;
            }
            case TIME_BEFORE_THE_LOCK -> {
                ChainHead ignored = super.lock(chainId);
                ChainHead head = asItIs(chainId);
                // else the time would be put right by that of the last entry
                ReflectionTestUtils.setField(head, "lastRecordedAt", Instant.EPOCH);
                yield head;
            }
        };
    }

    /** A copy that Hibernate does not write back. */
    private ChainHead asItIs(UUID chainId) {
        entityManager.flush();
        ChainHead head = heads.findById(chainId).orElseThrow(() -> Refusal.notFound("record.not-found"));
        entityManager.detach(head);
        return head;
    }
}
