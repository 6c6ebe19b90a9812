package org.bayhold.gate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fold;
import org.bayhold.buildsheet.Stamp;
import org.bayhold.identity.People;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.PersonalData;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Handovers as answered. */
@Component
class HandoffViews {
    private final PersonalData personalData;
    private final People people;
    private final CanonicalJson json;

    HandoffViews(PersonalData personalData, People people, CanonicalJson json) {
        this.personalData = personalData;
        this.people = people;
        this.json = json;
    }

    /** The handovers of a car in the order in which they were recorded. */
    List<HandoffView> of(CarRecord record) {
        List<Fact.HandedOver> handoffs = record.facts().stream()
                .filter(Fact.HandedOver.class::isInstance)
                .map(Fact.HandedOver.class::cast)
                .toList();
        if (handoffs.isEmpty()) {
            return List.of();
        }
        Stamp last = record.facts().get(record.facts().size() - 1).stamp();
        Set<UUID> voided = Fold.voided(record.facts(), last.recordedAt());
        List<HandoffView> views = new ArrayList<>();
        handoffs.forEach(handoff ->
                views.add(view(handoff, voided.contains(handoff.stamp().id()))));
        return views;
    }

    HandoffView view(Fact.HandedOver handoff, boolean voided) {
        Stamp stamp = handoff.stamp();
        Fact.Release release = handoff.exception();
        List<UUID> users = new ArrayList<>(List.of(stamp.by()));
        if (release != null && release.secondSigner() != null) {
            users.add(release.secondSigner());
        }
        Map<UUID, String> names = people.names(users);
        return new HandoffView(
                stamp.id(),
                stamp.vehicleId(),
                handoff.basis(),
                stamp.effectiveAt(),
                stamp.recordedAt(),
                names.getOrDefault(stamp.by(), stamp.by().toString()),
                handoff.odometerKm(),
                release == null ? null : view(release, names),
                voided,
                json.read(handoff.decision(), DecisionView.class),
                certificateUrl(stamp.id()));
    }

    /** Where people find the certificate. */
    static String certificatePage(UUID handoffId) {
        return "/handoffs/" + handoffId + "/certificate";
    }

    static String certificateUrl(UUID handoffId) {
        return "/api/v1/handoffs/" + handoffId + "/certificate";
    }

    private HandoffView.ReleaseView view(Fact.Release release, Map<UUID, String> names) {
        PersonalData.Texts texts = personalData.read(release.reason(), release.acknowledgedBy(), release.limitations());
        @Nullable String second = release.secondSigner() == null ? null : names.get(release.secondSigner());
        return new HandoffView.ReleaseView(
                texts.of(release.reason()),
                release.travel(),
                texts.of(release.acknowledgedBy()),
                texts.of(release.limitations()),
                release.returnBy(),
                second);
    }
}
