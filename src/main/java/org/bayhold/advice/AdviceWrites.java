package org.bayhold.advice;

import java.time.Instant;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.identity.Call;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.Ids;
import org.bayhold.journal.Text;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;

/** Keeps answers, and makes work of them. An answer is a chain of its own: no car's record knows of a what-if. */
@Component
class AdviceWrites {
    static final String GIVEN = "ADVICE_GIVEN";
    static final String PLANNED = "WORK_PLANNED";
    static final String DROPPED = "WORK_DROPPED";

    private static final int LONGEST_WORDS = 4000;

    private final Advising advising;
    private final AdviceRows rows;
    private final Plans plans;
    private final DroppedPlans droppedPlans;
    private final AdviceWords words;
    private final WriteTemplate writes;
    private final CanonicalJson json;

    AdviceWrites(
            Advising advising,
            AdviceRows rows,
            Plans plans,
            DroppedPlans droppedPlans,
            AdviceWords words,
            WriteTemplate writes,
            CanonicalJson json) {
        this.advising = advising;
        this.rows = rows;
        this.plans = plans;
        this.droppedPlans = droppedPlans;
        this.words = words;
        this.writes = writes;
        this.json = json;
    }

    /** What was kept. */
    record Kept(UUID id) {}

    /** Planned work, as the journal says it. */
    record Planned(UUID vehicleId) {}

    /** Planned work that was dropped, as the journal says it. */
    record Dropped(UUID plannedWorkId) {}

    UUID answer(Call call, AdviceRequest question) {
        UUID id = Ids.next();
        return writes.begin(call.request(), id, ChainKind.ADVICE, Kept.class, chain -> {
                    Advising.Advised advised = advising.answer(question);
                    Instant at = chain.recordedAt();
                    AdviceGiven given = new AdviceGiven(
                            advised.vehicleId(),
                            advised.body(),
                            chain.keep(Text.strip(question.question())),
                            chain.keep(Text.strip(question.askedBy())));
                    rows.save(
                            new AdviceRow(id, given, foundBy(given.body()), json.write(given.body()), at, chain.by()));
                    chain.append(GIVEN, id, at, given);
                    return new Kept(id);
                })
                .value()
                .id();
    }

    /** @throws Refusal where the answer is about no car of the register, proposes nothing, or is planned already */
    void plan(Call call, UUID adviceId) {
        AdviceRow row = rows.findById(adviceId).orElseThrow(() -> Refusal.notFound("advice.not-found"));
        UUID vehicleId = row.vehicleId();
        if (vehicleId == null) {
            throw Refusal.conflict("vehicleId", "advice.register-first");
        }
        if (json.read(row.body(), AdviceBody.class).proposed().isEmpty()) {
            throw Refusal.conflict("proposed", "advice.nothing-to-plan");
        }
        writes.write(call.request(), adviceId, Kept.class, chain -> {
            if (!plans.standingOf(adviceId).isEmpty()) {
                throw Refusal.conflict("adviceId", "advice.planned-already");
            }
            UUID id = Ids.next();
            Instant at = chain.recordedAt();
            plans.save(new PlanRow(id, adviceId, vehicleId, at, chain.by()));
            chain.append(PLANNED, id, at, new Planned(vehicleId));
            return new Kept(id);
        });
    }

    /** @throws Refusal where nothing is planned */
    void drop(Call call, UUID adviceId) {
        writes.write(call.request(), adviceId, Kept.class, chain -> {
            PlanRow plan = plans.standingOf(adviceId).stream()
                    .findFirst()
                    .orElseThrow(() -> Refusal.conflict("adviceId", "advice.nothing-planned"));
            UUID id = Ids.next();
            Instant at = chain.recordedAt();
            droppedPlans.save(new DroppedPlanRow(id, plan.getId(), adviceId, at, chain.by()));
            chain.append(DROPPED, id, at, new Dropped(plan.getId()));
            return new Kept(id);
        });
    }

    private String foundBy(AdviceBody body) {
        Stream<String> calibration =
                Stream.ofNullable(body.calibration()).map(named -> named.name() + " " + named.revision());
        Stream<String> changes = body.proposed().stream().map(words::change);
        String all = Stream.of(Stream.of(body.ecuHardware()), calibration, changes)
                .flatMap(some -> some)
                .collect(Collectors.joining("\n"))
                .toLowerCase(Locale.ROOT);
        return all.length() > LONGEST_WORDS ? all.substring(0, LONGEST_WORDS) : all;
    }
}
