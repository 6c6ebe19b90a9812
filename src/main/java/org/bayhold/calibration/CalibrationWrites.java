package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.bayhold.calibration.CalibrationIssued.IssuedMap;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Place;
import org.bayhold.identity.Call;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.FollowUp;
import org.bayhold.journal.FollowUpWorker;
import org.bayhold.journal.Ids;
import org.bayhold.journal.OpenChain;
import org.bayhold.journal.Personal;
import org.bayhold.journal.Text;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.journal.Written;
import org.bayhold.prediction.Assumptions;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/** Issuing and withdrawing revisions. */
@Component
class CalibrationWrites {
    static final String ISSUED = "CALIBRATION_ISSUED";
    static final String WITHDRAWN = "CALIBRATION_WITHDRAWN";

    private final CalibrationRows rows;
    private final Withdrawals withdrawals;
    private final Catalog catalog;
    private final RequestedMaps requestedMaps;
    private final CalibrationViews views;
    private final WriteTemplate writes;
    private final CanonicalJson json;
    private final Calibrations calibrations;
    private final ObjectProvider<FollowUpWorker> worker;
    private final ObjectProvider<CarsRunning> carsRunning;

    CalibrationWrites(
            CalibrationRows rows,
            Withdrawals withdrawals,
            Catalog catalog,
            RequestedMaps requestedMaps,
            CalibrationViews views,
            WriteTemplate writes,
            CanonicalJson json,
            Calibrations calibrations,
            ObjectProvider<FollowUpWorker> worker,
            ObjectProvider<CarsRunning> carsRunning) {
        this.rows = rows;
        this.withdrawals = withdrawals;
        this.catalog = catalog;
        this.requestedMaps = requestedMaps;
        this.views = views;
        this.writes = writes;
        this.json = json;
        this.calibrations = calibrations;
        this.worker = worker;
        this.carsRunning = carsRunning;
    }

    record Withdrawn(Personal reason) {}

    /** A revision that was withdrawn, with the cars that run it: their owners are to be called. */
    record WithdrawalView(CalibrationView calibration, List<?> affectedVehicles) {}

    Written<CalibrationView> issue(Call call, CalibrationRequest request) {
        if ((request.calid() == null) != (request.cvn() == null)) {
            throw Refusal.invalid(request.calid() == null ? "calid" : "cvn", "calibration.calid-and-cvn");
        }
        if (request.calid() == null && request.fileSha256() == null) {
            throw Refusal.invalid("calid", "calibration.unidentified");
        }
        Map<String, Object> assumes = request.assumes() == null ? Map.of() : request.assumes();
        Assumptions.ALL.holdKnown("assumes", assumes);
        List<CoverageLine> coverage = coverage(request.coverage());
        List<CalibrationMap> maps = requestedMaps.read(request.maps(), coverage);
        UUID id = Ids.next();
        return writes.begin(call.request(), id, ChainKind.CALIBRATION, CalibrationView.class, chain -> {
            String name = request.name().strip();
            String revision = request.revision().strip();
            if (rows.existsByNameKey(CalibrationRow.nameKey(name, revision))) {
                throw Refusal.conflict("revision", "calibration.exists", name, revision);
            }
            CalibrationIssued issued = new CalibrationIssued(
                    name,
                    revision,
                    request.ecuHardware().strip(),
                    Text.strip(request.calid()),
                    Text.upper(request.cvn()),
                    Text.lower(request.fileSha256()),
                    request.purpose() == null ? Purpose.NORMAL : request.purpose(),
                    Text.strip(request.limits()),
                    coverage,
                    issued(maps, request.maps(), chain),
                    assumes,
                    request.boostTargetKpa(),
                    chain.keep(Text.strip(request.note())));
            CalibrationRow row =
                    new CalibrationRow(id, issued, json.write(issued.assumes()), chain.recordedAt(), chain.by());
            chain.append(ISSUED, id, chain.recordedAt(), issued);
            rows.saveAndFlush(row);
            return views.view(row);
        });
    }

    private static @Nullable List<IssuedMap> issued(
            List<CalibrationMap> maps, @Nullable List<MapRequest> requested, OpenChain chain) {
        if (requested == null || maps.isEmpty()) {
            return null;
        }
        List<IssuedMap> issued = new ArrayList<>();
        for (int i = 0; i < maps.size(); i++) {
            CalibrationMap map = maps.get(i);
            Personal note = chain.keep(Text.strip(requested.get(i).note()));
            issued.add(new IssuedMap(map.name(), map.fuels(), map.factoryFuel(), note));
        }
        return issued;
    }

    /**
     * Withdraws a revision. Its chain's head is what every write that cites the revision holds shared, so after the
     * commit no decision still rests on it; the items on the cars that run it follow car by car.
     */
    WithdrawalView withdraw(Call call, UUID id, String reason) {
        CalibrationView view = writes.write(call.request(), id, CalibrationView.class, chain -> {
                    CalibrationRow row = rows.findById(id).orElseThrow(() -> Refusal.notFound("calibration.not-found"));
                    if (withdrawals.existsById(id)) {
                        throw Refusal.conflict("id", "calibration.withdrawn");
                    }
                    Personal why = chain.keepText(reason.strip());
                    WithdrawalRow withdrawal = new WithdrawalRow(id, why.id(), chain.recordedAt(), chain.by());
                    chain.append(WITHDRAWN, Ids.next(), chain.recordedAt(), new Withdrawn(why));
                    withdrawals.saveAndFlush(withdrawal);
                    chain.followUp(FollowUp.Kind.WITHDRAWAL, id);
                    return views.view(CalibrationRows.Whole.of(row, withdrawal));
                })
                .value();
        List<Object> affected = new ArrayList<>();
        Revision revision = calibrations.revision(id).orElseThrow();
        worker.ifAvailable(next -> next.workOff(id));
        carsRunning.ifAvailable(cars -> affected.addAll(cars.of(revision, call.caller())));
        return new WithdrawalView(view, affected);
    }

    private List<CoverageLine> coverage(List<CalibrationRequest.Line> lines) {
        List<CoverageLine> coverage = new ArrayList<>();
        Set<Place> places = new HashSet<>();
        for (int i = 0; i < lines.size(); i++) {
            CalibrationRequest.Line line = lines.get(i);
            String field = "coverage[" + i + "]";
            Place place = Place.typed(line.category(), line.position());
            if (!places.add(place)) {
                throw Refusal.invalid(field, "calibration.place-twice", line.category());
            }
            List<UUID> parts = line.partSpecIds() == null ? List.of() : line.partSpecIds();
            boolean factoryAllowed = Boolean.TRUE.equals(line.factoryAllowed());
            boolean noneAllowed = Boolean.TRUE.equals(line.noneAllowed());
            if (parts.isEmpty() && !factoryAllowed && !noneAllowed) {
                throw Refusal.invalid(field, "calibration.covers-nothing", line.category());
            }
            parts.forEach(part -> catalog.cited(part, line.category(), field + ".partSpecIds"));
            coverage.add(new CoverageLine(place, parts.stream().distinct().toList(), factoryAllowed, noneAllowed));
        }
        return coverage;
    }
}
