package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.CarWrites;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.OpenCar;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.journal.Personal;
import org.bayhold.journal.PersonalData;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Retune items: listed, planned, signed off. */
@Component
class RetuneItems {
    private static final int MOST_OUTSTANDING = 1000;

    private final RetuneItemRows rows;
    private final CauseRows causes;
    private final Decisions decisions;
    private final DecisionViews views;
    private final CarWrites writes;
    private final PersonalData personalData;
    private final CarRecords records;
    private final Clock clock;

    RetuneItems(
            RetuneItemRows rows,
            CauseRows causes,
            Decisions decisions,
            DecisionViews views,
            CarWrites writes,
            PersonalData personalData,
            CarRecords records,
            Clock clock) {
        this.rows = rows;
        this.causes = causes;
        this.decisions = decisions;
        this.views = views;
        this.writes = writes;
        this.personalData = personalData;
        this.records = records;
        this.clock = clock;
    }

    /** A sign-off: the cleared item, or the checks where it was refused for want of evidence. */
    record SignOff(@Nullable RetuneItemView item, List<DecisionView.CheckView> missing) {}

    @Transactional(readOnly = true)
    public List<RetuneItemView> find(RetuneItemView.@Nullable Status status, UUID after, int size) {
        Limit limit = Limit.of(size);
        if (status == null) {
            return views(rows.all(after, limit));
        }
        return views(
                switch (status) {
                    case OPEN -> rows.open(after, limit);
                    case CLEARED -> rows.cleared(after, limit);
                });
    }

    /** What is to be done first stands first: by risk, then by the promised time, then by age. */
    @Transactional(readOnly = true)
    public List<RetuneItemView> outstanding() {
        return views(rows.open(new UUID(0, 0), Limit.of(MOST_OUTSTANDING))).stream()
                .sorted(Comparator.comparing(RetuneItemView::risk, Comparator.reverseOrder())
                        .thenComparing(RetuneItemView::promisedAt, Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(RetuneItemView::openedAt))
                .toList();
    }

    /** What a sign-off on this basis would rest on now, passed or not, were {@code signer} to sign. */
    @Transactional(readOnly = true)
    public List<DecisionView.CheckView> evidence(UUID id, Fact.ClearanceBasis basis, UUID signer) {
        CarRecord record = records.of(row(id).vehicleId());
        AsOf now = AsOf.of(record, clock, null, null);
        Question question = decisions.question(record, now.effectiveAt(), now.knownAt());
        return views.checks(Evidence.of(question, basis, signer), question.car().driveLogs());
    }

    @Transactional(readOnly = true)
    public List<RetuneItemView> ofVehicle(UUID vehicleId) {
        return views(rows.ofVehicle(vehicleId));
    }

    /** When these items are promised; an item without a promise is left out. */
    Map<UUID, Instant> promised(Collection<UUID> ids) {
        Map<UUID, Instant> promised = new HashMap<>();
        for (RetuneItemRow row : rows.findAllById(ids)) {
            Instant at = row.promisedAt();
            if (at != null) {
                promised.put(row.getId(), at);
            }
        }
        return promised;
    }

    @Transactional(readOnly = true)
    public RetuneItemView get(UUID id) {
        return views(List.of(row(id))).get(0);
    }

    /** Who does it, by when, and what to know about it. */
    RetuneItemView plan(Call call, UUID id, Optional<Long> ifMatch, PlanRequest plan) {
        UUID vehicleId = row(id).vehicleId();
        return writes.write(call.request(), vehicleId, List.of(), RetuneItemView.class, car -> {
                    RetuneItemRow row = row(id);
                    if (ifMatch.isPresent() && ifMatch.get() != row.version()) {
                        throw Refusal.of(Code.STALE, "problem.stale");
                    }
                    Personal assignee = car.chain().keep(Text.strip(plan.assignee()));
                    Personal note = car.chain().keep(Text.strip(plan.note()));
                    Instant at = car.chain().recordedAt();
                    car.append(new Fact.RetunePlanned(car.stamp(at), id, assignee, plan.promisedAt(), note));
                    row.planned(assignee, plan.promisedAt(), note);
                    rows.flush();
                    return views(List.of(row)).get(0);
                })
                .value();
    }

    /** The signature that closes an item, only on evidence. docs/rules.md, rule 4. */
    SignOff clear(Call call, UUID id, ClearanceRequest request) {
        call.caller().mustSign(Act.CLEAR_RETUNE);
        UUID vehicleId = row(id).vehicleId();
        return writes.write(call.request(), vehicleId, List.of(), SignOff.class, car -> clear(car, call, id, request))
                .value();
    }

    private SignOff clear(OpenCar car, Call call, UUID id, ClearanceRequest request) {
        RetuneItemRow row = row(id);
        if (!row.isOpen()) {
            throw Refusal.conflict("id", "retune.cleared");
        }
        Instant at = car.chain().recordedAt();
        Question question = decisions.question(car.record(), at, at);
        List<CheckResult> checks = Evidence.of(question, request.basis(), call.by());
        List<CheckResult> missing = checks.stream().filter(CheckResult::failed).toList();
        if (!missing.isEmpty()) {
            return new SignOff(null, views.checks(missing, question.car().driveLogs()));
        }
        car.append(new Fact.Cleared(
                car.stamp(at),
                id,
                request.basis(),
                call.caller().tokenId(),
                Evidence.records(question.car(), checks),
                car.chain().keep(Text.strip(request.note()))));
        row.closed(at, request.basis().name());
        rows.flush();
        car.chain().openItemId(null);
        return new SignOff(views(List.of(row)).get(0), List.of());
    }

    private RetuneItemRow row(UUID id) {
        return rows.findById(id).orElseThrow(() -> Refusal.notFound("retune.not-found"));
    }

    private List<RetuneItemView> views(List<RetuneItemRow> found) {
        if (found.isEmpty()) {
            return List.of();
        }
        Map<UUID, List<CauseRow>> byItem = causes
                .of(found.stream().map(RetuneItemRow::getId).toList())
                .stream()
                .collect(Collectors.groupingBy(CauseRow::itemId));
        List<@Nullable UUID> personal = new ArrayList<>();
        found.forEach(row -> {
            personal.add(row.assigneeId());
            personal.add(row.noteId());
        });
        PersonalData.Texts texts = personalData.readIds(personal);
        return found.stream()
                .map(row -> view(row, byItem.getOrDefault(row.getId(), List.of()), texts))
                .toList();
    }

    private RetuneItemView view(RetuneItemRow row, List<CauseRow> of, PersonalData.Texts texts) {
        return new RetuneItemView(
                row.getId(),
                row.vehicleId(),
                row.isOpen() ? RetuneItemView.Status.OPEN : RetuneItemView.Status.CLEARED,
                row.risk(),
                row.openedAt(),
                of.stream()
                        .map(cause -> new RetuneItemView.CauseView(
                                cause.code(),
                                views.sentence("retune.cause." + cause.code().name()),
                                cause.recordId(),
                                cause.effectiveAt(),
                                cause.recordedAt()))
                        .toList(),
                row.clearedAt(),
                row.basis(),
                texts.of(row.assigneeId()),
                row.promisedAt(),
                texts.of(row.noteId()),
                row.version());
    }
}
