package org.bayhold.gate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.BuildLine;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.CodeWords;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.FactViews;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.FlashedView;
import org.bayhold.buildsheet.Fold;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.bayhold.drivelog.Verdict;
import org.bayhold.drives.KnownDrives;
import org.bayhold.drives.LogDrawing;
import org.bayhold.drives.LogPictures;
import org.bayhold.identity.Caller;
import org.bayhold.identity.People;
import org.bayhold.journal.Journal;
import org.bayhold.page.Units;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Release certificates, made from the record as it was known when the car left. docs/rules.md, "The release certificate". */
@Component
class Certificates {
    private final Journal journal;
    private final CarRecords records;
    private final HandoffViews handoffViews;
    private final Vehicles vehicles;
    private final Catalog catalog;
    private final Calibrations calibrations;
    private final FactViews factViews;
    private final CodeWords codeWords;
    private final People people;
    private final KnownDrives drives;
    private final LogDrawing drawing;
    private final MessageSource messages;

    Certificates(
            Journal journal,
            CarRecords records,
            HandoffViews handoffViews,
            Vehicles vehicles,
            Catalog catalog,
            Calibrations calibrations,
            FactViews factViews,
            CodeWords codeWords,
            People people,
            KnownDrives drives,
            LogDrawing drawing,
            MessageSource messages) {
        this.journal = journal;
        this.records = records;
        this.handoffViews = handoffViews;
        this.vehicles = vehicles;
        this.catalog = catalog;
        this.calibrations = calibrations;
        this.factViews = factViews;
        this.codeWords = codeWords;
        this.people = people;
        this.drives = drives;
        this.drawing = drawing;
        this.messages = messages;
    }

    /** @param address where the certificate is to be found; the QR code names it together with the entry's hash */
    @Transactional(readOnly = true)
    public Certificate of(UUID handoffId, Caller caller, String address) {
        UUID vehicleId = journal.chainOf(handoffId).orElseThrow(Certificates::notFound);
        CarRecord record = records.of(vehicleId);
        HandoffView handoff = handoffViews.of(record).stream()
                .filter(view -> view.id().equals(handoffId))
                .findFirst()
                .orElseThrow(Certificates::notFound);
        VehicleView vehicle = vehicles.view(vehicleId, caller).orElseThrow(Certificates::notFound);
        CarState after = record.at(handoff.effectiveAt(), handoff.recordedAt());
        Optional<Instant> leftBefore = after.handoffs().stream()
                .map(earlier -> earlier.stamp().effectiveAt())
                .filter(at -> at.isBefore(handoff.effectiveAt()))
                .max(Instant::compareTo);
        CarState before = record.at(leftBefore.orElse(Instant.EPOCH), handoff.recordedAt());
        String hash = journal.hashOf(handoffId).orElseThrow(Certificates::notFound);
        return new Certificate(
                handoff,
                vehicle,
                after.ecuHardware(),
                buildSheet(before, after),
                FlashedView.of(before.inEcu()),
                FlashedView.of(after.inEcu()),
                after.revision().map(Revision::id).flatMap(calibrations::limits).orElse(null),
                work(record, handoff, leftBefore.orElse(Instant.EPOCH)),
                signature(record, handoff),
                drive(after),
                hash,
                QrCode.of(address + "#" + hash));
    }

    /** The last drive since the flash that came to a verdict, in pictures and in SI; null where there is none. */
    private @Nullable LogPictures drive(CarState after) {
        return after.driveLogs().stream()
                .filter(log -> log.verdict() != Verdict.INSUFFICIENT)
                .filter(log -> after.flashedAt()
                        .filter(at -> log.stamp().effectiveAt().isBefore(at))
                        .isEmpty())
                .reduce((earlier, later) -> later)
                .map(log -> drawing.of(drives.judged(log), Units.METRIC))
                .orElse(null);
    }

    private static Refusal notFound() {
        return Refusal.notFound("handoff.not-found");
    }

    /** Every place that is not, or was not, factory. */
    private List<Certificate.PartLine> buildSheet(CarState before, CarState after) {
        Map<UUID, PartSpec> specs = catalog.specs(Stream.concat(before.lines().stream(), after.lines().stream())
                .flatMap(line -> Stream.ofNullable(line.fitted().partSpecId()))
                .toList());
        TreeSet<Place> places = new TreeSet<>();
        Stream.concat(before.lines().stream(), after.lines().stream())
                .map(BuildLine::place)
                .forEach(places::add);
        List<Certificate.PartLine> lines = new ArrayList<>();
        for (Place place : places) {
            Fitted was = before.fittedAt(place);
            Fitted is = after.fittedAt(place);
            if (was.state() != Fitted.State.FACTORY || is.state() != Fitted.State.FACTORY) {
                lines.add(new Certificate.PartLine(label(place), name(was, specs), name(is, specs), !was.equals(is)));
            }
        }
        return lines;
    }

    private String label(Place place) {
        String category = message("category." + place.category().name());
        return place.position() == null ? category : category + ", " + place.position();
    }

    private String name(Fitted fitted, Map<UUID, PartSpec> specs) {
        PartSpec spec = specs.get(fitted.partSpecId());
        return spec == null
                ? message("fitted." + fitted.state().name())
                : spec.maker() + " " + spec.partNumber() + ", " + message("fitted.revision") + " "
                        + spec.specRevision();
    }

    /** Changes, flashes, ECU checks and sign-offs since the car left last, as known when it left now. */
    private List<Certificate.Work> work(CarRecord record, HandoffView handoff, Instant since) {
        var voided = Fold.voided(record.facts(), handoff.recordedAt());
        List<Fact> facts = record.facts().stream()
                .filter(fact -> fact instanceof Fact.PartChanged
                        || fact instanceof Fact.Flashed
                        || fact instanceof Fact.ReadBack
                        || fact instanceof DriveLogged
                        || fact instanceof Fact.Inspected
                        || fact instanceof Fact.Cleared)
                .filter(fact -> !fact.stamp().recordedAt().isAfter(handoff.recordedAt()))
                .filter(fact -> fact.stamp().effectiveAt().isAfter(since))
                .filter(fact -> !fact.stamp().effectiveAt().isAfter(handoff.effectiveAt()))
                .filter(fact -> !voided.contains(fact.stamp().id()))
                .toList();
        return factViews.flat(facts).stream().map(this::work).toList();
    }

    private Certificate.Work work(ObjectNode fact) {
        StringBuilder what = new StringBuilder(message("fact." + text(fact, "kind")));
        for (String detail : List.of("action", "outcome", "verdict", "basis")) {
            String value = text(fact, detail);
            if (value != null) {
                what.append(": ").append(message(detail + "." + value));
            }
        }
        String category = text(fact, "category");
        if (category != null) {
            what.append(", ").append(message("category." + category));
        }
        String calid = text(fact, "calid");
        if (calid != null) {
            what.append(": CALID ").append(calid).append(", CVN ").append(text(fact, "cvn"));
        }
        String file = text(fact, "fileSha256");
        if (file != null) {
            what.append(": SHA-256 ").append(file);
        }
        codeWords.of(fact).forEach(told -> what.append(". ").append(told));
        return new Certificate.Work(
                what.toString(),
                Instant.parse(fact.get("effectiveAt").asString()),
                fact.get("by").asString(),
                text(fact, "performedBy"));
    }

    private static @Nullable String text(ObjectNode fact, String field) {
        JsonNode value = fact.get(field);
        return value == null || value.isNull() ? null : value.asString();
    }

    private Certificate.Signature signature(CarRecord record, HandoffView handoff) {
        UUID signer = record.facts().stream()
                .map(Fact::stamp)
                .filter(stamp -> stamp.id().equals(handoff.id()))
                .findFirst()
                .orElseThrow(Certificates::notFound)
                .by();
        List<String> roles = people.rolesOf(signer).stream()
                .map(role -> message("role." + role.name()))
                .toList();
        return new Certificate.Signature(
                handoff.by(),
                String.join(", ", roles),
                handoff.recordedAt(),
                message("certificate.meaning." + handoff.basis().name()));
    }

    private String message(String key) {
        return Objects.requireNonNull(messages.getMessage(key, null, key, Locale.ENGLISH));
    }
}
