package org.bayhold.gate;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.buildsheet.CarWrites;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.OpenCar;
import org.bayhold.identity.AccessTokens;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Role;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Text;
import org.bayhold.prediction.Risk;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Handing a car over: CLEAR, refused, or a manager's exception. docs/rules.md, rules 5 and 6. */
@Component
class Handoffs {
    private final CarWrites writes;
    private final Decisions decisions;
    private final DecisionViews views;
    private final HandoffViews handoffViews;
    private final AccessTokens tokens;
    private final CanonicalJson json;

    Handoffs(
            CarWrites writes,
            Decisions decisions,
            DecisionViews views,
            HandoffViews handoffViews,
            AccessTokens tokens,
            CanonicalJson json) {
        this.writes = writes;
        this.decisions = decisions;
        this.views = views;
        this.handoffViews = handoffViews;
        this.tokens = tokens;
        this.json = json;
    }

    /** Exactly one of the two: the handover, or the decision that refused it. */
    record Result(@Nullable HandoffView handoff, @Nullable DecisionView refused) {}

    Result handOver(Call call, UUID vehicleId, HandoffRequest request) {
        HandoffRequest.ExceptionRequest exception = request.exception();
        String token = exception == null ? null : exception.secondSignerToken();
        if (token == null) {
            return handOver(call, vehicleId, request, null);
        }
        Caller second = tokens.callerOf(token.strip())
                .orElseThrow(() -> Refusal.invalid("exception.secondSignerToken", "handoff.second-signer"));
        return handOver(call, vehicleId, request, second);
    }

    /** @param second who signed as well; null where nobody did */
    Result handOver(Call call, UUID vehicleId, HandoffRequest request, @Nullable Caller second) {
        HandoffRequest.ExceptionRequest exception = request.exception();
        if (exception != null) {
            call.caller().mustSign(Act.RELEASE_BY_EXCEPTION);
        }
        Optional<Caller> secondSigner = exception == null ? Optional.empty() : secondSigner(call.caller(), second);
        return writes.write(call.request(), vehicleId, List.of(), Result.class, car -> {
                    Instant at = car.chain().effectiveAt(request.effectiveAt());
                    Decision decision =
                            decisions.atTheDoor(car.record(), at, car.chain().recordedAt());
                    if (exception != null) {
                        return release(car, call, at, request, exception, secondSigner, decision);
                    }
                    return decision.isClear() ? clear(car, at, request, decision) : refuse(car, at, decision);
                })
                .value();
    }

    private Result clear(OpenCar car, Instant at, HandoffRequest request, Decision decision) {
        Fact.HandedOver handedOver = new Fact.HandedOver(
                car.stamp(at),
                Fact.HandoffBasis.CLEAR,
                request.odometerKm(),
                null,
                0,
                stored(decision),
                decision.rules());
        car.appendClear(handedOver);
        return new Result(handoffViews.view(handedOver, false), null);
    }

    /** A refusal is a fact like any other, and an answer rather than an error: an error would undo the record of it. */
    private Result refuse(OpenCar car, Instant at, Decision decision) {
        car.append(new Fact.HandoffRefused(car.stamp(at), decision.failed().size(), stored(decision)));
        return new Result(null, views.view(decision));
    }

    private Result release(
            OpenCar car,
            Call call,
            Instant at,
            HandoffRequest request,
            HandoffRequest.ExceptionRequest exception,
            Optional<Caller> second,
            Decision decision) {
        if (decision.isClear()) {
            throw Refusal.invalid("exception", "handoff.exception-not-needed");
        }
        boolean twoMustSign = decision.risk() == Risk.EXTREME && exception.travel() == Fact.Travel.DRIVEN;
        if (twoMustSign && second.isEmpty()) {
            throw Refusal.invalid("exception.secondSignerToken", "handoff.second-signer");
        }
        Fact.Release release = new Fact.Release(
                car.chain().keepText(exception.reason().strip()),
                exception.travel(),
                car.chain().keepText(exception.acknowledgedBy().strip()),
                car.chain().keep(Text.strip(exception.limitations())),
                exception.returnBy(),
                call.caller().tokenId(),
                second.map(Caller::userId).orElse(null));
        Fact.HandedOver handedOver = new Fact.HandedOver(
                car.stamp(at),
                Fact.HandoffBasis.EXCEPTION,
                request.odometerKm(),
                release,
                decision.failed().size(),
                stored(decision),
                decision.rules());
        car.append(handedOver);
        return new Result(handoffViews.view(handedOver, false), null);
    }

    private String stored(Decision decision) {
        return json.write(views.view(decision));
    }

    private static Optional<Caller> secondSigner(Caller first, @Nullable Caller second) {
        if (second == null) {
            return Optional.empty();
        }
        boolean may = second.maySign()
                && (second.roles().contains(Role.MANAGER) || second.roles().contains(Role.CALIBRATOR))
                && !second.userId().equals(first.userId());
        if (!may) {
            throw Refusal.invalid("exception.secondSignerToken", "handoff.second-signer");
        }
        return Optional.of(second);
    }
}
