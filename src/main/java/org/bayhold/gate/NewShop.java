package org.bayhold.gate;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.journal.Chains;
import org.bayhold.journal.Snapshots;
import org.bayhold.journal.WriteRequest;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.refusal.Refusal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * A shop that begins asks for a drive log: its first policy, a dated fact like any other, on record before anybody comes. A
 * shop that has a record already keeps what it has. docs/rules.md, "Policy".
 */
@Component
@Order(0)
class NewShop implements ApplicationRunner {
    /** Nobody: the application itself. */
    static final UUID ITSELF = new UUID(0, 0);

    private static final Logger LOG = LoggerFactory.getLogger(NewShop.class);
    private static final String RECORDED =
            "select e.id from journal_entry e where e.chain_id <> :users order by e.chain_id limit 1";

    private final PolicyBook book;
    private final WriteTemplate writes;
    private final Snapshots snapshots;

    NewShop(PolicyBook book, WriteTemplate writes, Snapshots snapshots) {
        this.book = book;
        this.writes = writes;
        this.snapshots = snapshots;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (!isNew()) {
            return;
        }
        try {
            // of two servers that begin one shop, the second finds it begun
            boolean begun = writes.write(WriteRequest.internal(ITSELF), Chains.SHOP, Boolean.class, chain -> {
                        boolean first = isNew();
                        if (first) {
                            book.append(chain, Policy.USUAL);
                        }
                        return first;
                    })
                    .value();
            LOG.debug("the first policy was set: {}", begun);
        } catch (Refusal broken) {
            LOG.warn("The record is not served: a new shop's policy was not set");
        }
    }

    private boolean isNew() {
        List<UUID> recorded = snapshots.rows(RECORDED, Map.of("users", Chains.IDENTITY), row -> row.id(1));
        return recorded.isEmpty();
    }
}
