package org.bayhold.architecture;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.audit.Finding;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.Coverage;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.buildsheet.HistoryLines;
import org.bayhold.calibration.Purpose;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.BenefitNote;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartAttributes;
import org.bayhold.drivelog.AirSource;
import org.bayhold.drivelog.Column;
import org.bayhold.drivelog.Flaw;
import org.bayhold.drivelog.Missing;
import org.bayhold.drivelog.Parameter;
import org.bayhold.drivelog.Refused;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drivelog.Unit;
import org.bayhold.drivelog.Unjudged;
import org.bayhold.drivelog.Verdict;
import org.bayhold.gate.Check;
import org.bayhold.gate.Outcome;
import org.bayhold.gate.Reason;
import org.bayhold.identity.Role;
import org.bayhold.obd.CodeTopic;
import org.bayhold.obd.Readiness;
import org.bayhold.obd.TroubleCode;
import org.bayhold.page.Units;
import org.bayhold.prediction.Assumptions;
import org.bayhold.prediction.Formula;
import org.bayhold.prediction.Input;
import org.bayhold.prediction.Risk;
import org.bayhold.prediction.Sweep;
import org.bayhold.refusal.Code;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Vin;

/** Keys of sentences with a computed end: the ends that need a sentence, and those that may have one. */
final class KeyFamilies {
    private static final Reason[] PASSING = {
        Reason.ALL_PARTS_KNOWN,
        Reason.FLASHED,
        Reason.FOUND_BY_READ_BACK,
        Reason.FACTORY_THROUGHOUT,
        Reason.NO_CHANGE_SINCE,
        Reason.CHANGE_SIGNED_OFF,
        Reason.IN_FORCE,
        Reason.COVERED,
        Reason.READ_BACK_SHOWS_IT,
        Reason.NO_RELATED_CODES,
        Reason.CODES_NOT_READ,
        Reason.NOT_ASKED_FOR,
        Reason.NO_SPARK_IGNITION,
        Reason.DRIVE_LOG_PASSES,
        Reason.NOTHING_OPEN,
        Reason.ACKNOWLEDGED,
        Reason.ANOTHER_PERSON
    };

    /** What may be odd about a record that stands all the same. */
    private static final Set<String> WARNINGS = Set.of(
            "ODOMETER_RAN_BACKWARDS",
            "ARRIVAL_IMPLIED",
            "FILE_ON_RECORD",
            "FILE_ON_ANOTHER_CAR",
            "CVN_IS_THE_FACTORYS",
            "CALID_LONGER_THAN_16",
            "CVN_NOT_8_HEX_DIGITS",
            "MONITORS_NOT_COMPLETE");

    private static final Set<String> ANSWERS = Set.of("RETUNE_FIRST", "COVERED", "UNKNOWN_PARTS");

    private static final Set<String> ASKED = Set.of(
            "readBackRequired",
            "troubleCodesChecked",
            "driveLogRequired",
            "acknowledgementRequired",
            "secondPersonRequired");

    /** What is unknown has a sentence of its own. */
    private static final Set<String> KNOWN_GAPS = Set.of("PART_NOT_COVERED", "FACTORY_NOT_COVERED", "NONE_NOT_COVERED");

    /** By what their keys begin with. */
    static final Map<String, Family> ALL = Map.ofEntries(
            family("problem.", ends(Code.values(), Code::slug)),
            family("vin.", ends(Vin.Reason.values(), reason -> reason.name().toLowerCase(Locale.ROOT))),
            family("gate.reason.", names(Reason.values())),
            family("gate.why.", names(Coverage.Why.values())),
            family("retune.cause.", names(Cause.Code.values())),
            family("category.", names(Category.values())),
            family("fitted.", names(Fitted.State.values())),
            family("action.", names(Fact.Action.values())),
            family("outcome.", both(names(Fact.Outcome.values()), names(Outcome.values()))),
            family(
                    "basis.",
                    both(names(Fact.ClearanceBasis.values()), Set.of("CAUSES_VOIDED")),
                    names(Fact.HandoffBasis.values())),
            family("risk.", names(Risk.values())),
            family("flow.", names(Sweep.Named.values())),
            family("origin.", names(Input.Origin.values())),
            family("formula.", names(Formula.values())),
            family("how.", names(Formula.values())),
            family("input.", InputNames.ALL),
            family("units.", names(Units.values())),
            family("pictures.", Set.of("not-known")),
            family("next.", failures()),
            family("refused.", ends(Code.values(), Code::slug)),
            family("said.flash.", names(Fact.Outcome.values())),
            family("said.handed-over.", names(Fact.HandoffBasis.values())),
            family("history.", Set.copyOf(HistoryLines.SAID)),
            family("register.warning.", names(Vin.Warning.values())),
            family("warning.", WARNINGS),
            family("code.topic.", names(CodeTopic.values())),
            family("code.kind.", names(TroubleCode.Kind.values())),
            family("code.monitor.", names(Readiness.Monitor.values())),
            family("signal.", Set.of("WARNING", "CAUTION", "NOTICE")),
            family("car.in-ecu.", Set.of("FACTORY", "UNKNOWN", "NOT_OURS", "FAILED")),
            family("car.left.", names(Fact.HandoffBasis.values())),
            family("done-by.", names(Fact.Source.values())),
            family("source.", Set.of(Fact.Source.CUSTOMER_REPORTED.name())),
            family("usage.", names(Fact.Usage.values())),
            family("install.action.", names(Fact.Action.values())),
            family("flash.outcome.", names(Fact.Outcome.values())),
            family("finding.", names(Finding.values())),
            family("purpose.", names(Purpose.values())),
            family("baseline.", names(Baseline.values())),
            family("attribute.", attributes()),
            family("drivelog.refused.", names(Refused.values())),
            family("drivelog.missing.", names(Missing.Code.values())),
            family("drivelog.unjudged.", names(Unjudged.values())),
            family("drivelog.parameter.", names(Parameter.values())),
            family("drivelog.flaw.", names(Flaw.Kind.values())),
            family("drivelog.unit.", names(Unit.values())),
            family("drivelog.code.", names(org.bayhold.drivelog.Finding.Code.values())),
            family("drivelog.use.", names(Column.Use.values())),
            family("drivelog.separator.", Set.of("COMMA", "SEMICOLON", "TAB", "BAR")),
            family("drives.picture.grade.", Set.of("TOO_SHORT", "NORMAL", "NOTABLE", "BEYOND")),
            family("drives.picture.source.", names(AirSource.values())),
            family("drives.picture.channel.", Set.of("LAMBDA", "PRESSURE", "KNOCK", "AIRFLOW")),
            family("drives.picture.dashed.", Set.of("LAMBDA", "PRESSURE", "KNOCK")),
            family("verdict.", names(Verdict.values())),
            family("venue.", names(DriveLogged.Venue.values())),
            family("said.drive-log.", names(Verdict.values())),
            family("prediction.effect.", Set.of(), names(Category.values())),
            family("role.", names(Role.values())),
            family("travel.", names(Fact.Travel.values())),
            family("check.", asked(), names(Check.values())),
            family("fact.", both(kinds(), Set.of("VEHICLE_REGISTERED", "VEHICLE_AMENDED"))),
            family("advice.answer.", ANSWERS),
            family("advice.letter.answer.", ANSWERS),
            family("advice.change.", names(Fact.Action.values())),
            family("advice.caution.", Set.of("extreme", "high", "engine")),
            family("advice.reason.proposed.", KNOWN_GAPS),
            family("advice.reason.already.", KNOWN_GAPS),
            family("advice.worth.", Set.of("BRINGS_NOTHING", "HARMS")),
            family("parts.supersession.", Set.of("before", "after")),
            family("policy.", ASKED),
            family("policy.means.", ASKED),
            family("threshold.", thresholds()),
            family("threshold.means.", thresholds()),
            family("threshold.group.", Set.of("NEEDED", "CORRECTION", "FULL_LOAD")),
            family("asked.", Set.of("YES", "NO")),
            family("benefit.", names(BenefitNote.Effect.values())),
            family("ask.action.", names(Fact.Action.values())),
            family("certificate.", Set.of("before", "after")),
            family("certificate.how.", Set.of("FLASHED", "FOUND", "NOT_OURS", "FAILED")),
            family("certificate.released.", names(Fact.HandoffBasis.values())),
            family("certificate.meaning.", names(Fact.HandoffBasis.values())));

    private KeyFamilies() {}

    /** The ends of one beginning. */
    record Family(Set<String> needed, Set<String> possible) {}

    private static Map.Entry<String, Family> family(String prefix, Set<String> needed) {
        return family(prefix, needed, Set.of());
    }

    private static Map.Entry<String, Family> family(String prefix, Set<String> needed, Set<String> more) {
        return Map.entry(prefix, new Family(needed, both(needed, more)));
    }

    private static Set<String> both(Set<String> one, Set<String> other) {
        return Stream.concat(one.stream(), other.stream()).collect(Collectors.toSet());
    }

    /** The gate's own checks; the one that only a sign-off asks is never shown with a handover. */
    private static Set<String> asked() {
        Set<String> checks = new TreeSet<>(names(Check.values()));
        checks.remove(Check.SECOND_PERSON_SIGNED.name());
        return checks;
    }

    private static Set<String> attributes() {
        return Stream.concat(Arrays.stream(Category.values()).map(PartAttributes::of), Stream.of(Assumptions.ALL))
                .flatMap(set -> set.attributes().stream())
                .map(Attribute::name)
                .collect(Collectors.toSet());
    }

    private static Set<String> thresholds() {
        return Arrays.stream(Thresholds.class.getRecordComponents())
                .map(RecordComponent::getName)
                .collect(Collectors.toSet());
    }

    private static Set<String> kinds() {
        return Arrays.stream(Fact.class.getPermittedSubclasses())
                .map(kind -> kind.getSimpleName()
                        .replaceAll("(?<=[a-z])(?=[A-Z])", "_")
                        .toUpperCase(Locale.ROOT))
                .collect(Collectors.toSet());
    }

    /** A reason that lets a check pass leaves nothing to do. */
    private static Set<String> failures() {
        Set<String> failures = new TreeSet<>(names(Reason.values()));
        failures.removeAll(names(PASSING));
        return failures;
    }

    private static Set<String> names(Enum<?>[] values) {
        return ends(values, Enum::name);
    }

    private static <T> Set<String> ends(T[] values, Function<? super T, String> end) {
        return Arrays.stream(values).map(end).collect(Collectors.toSet());
    }
}
