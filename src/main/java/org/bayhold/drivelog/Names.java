package org.bayhold.drivelog;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * By which names a parameter goes: the words and abbreviations of SAE J1979 / ISO 15031-5 in their plain spellings (from
 * memory). Case, blanks, marks and a unit at the end are not part of a name. {@code docs/drive-log.md, D3}.
 */
final class Names {
    private static final Map<String, Parameter> KNOWN = new HashMap<>();
    private static final Pattern BRACKETS = Pattern.compile("[(\\[{]([^)\\]}]*)[)\\]}]");
    /** Where a unit may begin: after a blank or a mark. */
    private static final Pattern BREAK = Pattern.compile("[\\s,/_:;|-]+(?=[^\\s,/_:;|-])");

    private static final int LONGEST = 120;

    static {
        know(Parameter.TIME, "time", "timestamp", "t", "elapsed", "elapsedtime", "timeofday", "datetime", "clock");
        know(Parameter.TIME, "timesincestart", "logtime", "seconds", "sampletime", "runtm", "timesinceenginestart");
        know(Parameter.ENGINE_SPEED, "rpm", "enginespeed", "enginerpm", "n", "speedengine", "engspeed", "enginerevs");
        know(Parameter.CALCULATED_LOAD, "loadpct", "calculatedload", "calculatedengineload", "calculatedloadvalue");
        know(Parameter.CALCULATED_LOAD, "engineload", "load", "calcload", "clv", "calculatedengineloadvalue");
        know(Parameter.ABSOLUTE_LOAD, "loadabs", "absoluteload", "absoluteloadvalue", "absload", "absoluteengineload");
        know(Parameter.COOLANT_TEMPERATURE, "ect", "coolant", "coolanttemp", "coolanttemperature", "enginecoolanttemp");
        know(Parameter.COOLANT_TEMPERATURE, "enginecoolanttemperature", "enginecoolant", "watertemp", "clt");
        know(Parameter.INTAKE_AIR_TEMPERATURE, "iat", "intakeairtemp", "intakeairtemperature", "intaketemp");
        know(Parameter.INTAKE_AIR_TEMPERATURE, "intaketemperature", "intakeair", "intakemanifoldtemperature");
        know(Parameter.MANIFOLD_PRESSURE, "map", "manifoldpressure", "intakemanifoldpressure", "manifoldabspressure");
        know(Parameter.MANIFOLD_PRESSURE, "manifoldabsolutepressure", "intakemanifoldabsolutepressure");
        know(Parameter.MANIFOLD_PRESSURE, "intakemanifoldabspressure", "intakepressure");
        know(Parameter.BAROMETRIC_PRESSURE, "baro", "barometricpressure", "barometer", "barometric", "baropressure");
        know(Parameter.BAROMETRIC_PRESSURE, "atmosphericpressure", "absolutebarometricpressure");
        know(Parameter.AIRFLOW, "maf", "airflow", "massairflow", "massairflowrate", "airflowrate", "mafrate");
        know(Parameter.AIRFLOW, "airflowratefrommassairflowsensor", "mafairflowrate", "airmass", "mafairflow");
        know(
                Parameter.THROTTLE,
                "tp",
                "tps",
                "throttle",
                "throttleposition",
                "absolutethrottleposition",
                "throttlepos");
        know(Parameter.THROTTLE, "absolutethrottle", "throttlepositiona", "tpa", "throttleangle", "tpabs");
        know(Parameter.ACCELERATOR, "appd", "app", "accelerator", "acceleratorpedal", "acceleratorpedalposition");
        know(Parameter.ACCELERATOR, "acceleratorpedalpositiond", "acceleratorposition", "pedal", "pedalposition");
        know(Parameter.ACCELERATOR, "accelpedal", "accelpedalposition", "acceleratorpedald");
        know(Parameter.FUEL_SYSTEM_STATUS, "fuelsys1", "fuelsys", "fuelsystemstatus", "fuelsystem1status");
        know(Parameter.FUEL_SYSTEM_STATUS, "fuelsystemstatus1", "fuelsystem", "fuelsystem1", "loopstatus");
        know(Parameter.COMMANDED_RATIO, "eqrat", "commandedequivalenceratio", "equivalenceratio", "lambdacommanded");
        know(
                Parameter.COMMANDED_RATIO,
                "commandedlambda",
                "commandedratio",
                "lambdacmd",
                "targetlambda",
                "lambdatarget");
        know(Parameter.COMMANDED_RATIO, "commandedairfuelratio", "commandedafr", "fuelairequivalenceratiocommanded");
        know(Parameter.COMMANDED_RATIO, "commandedeqratio", "fuelaircommandedequivalenceratio", "targetafr");
        know(Parameter.MEASURED_LAMBDA, "lambda", "eqrat11", "measuredlambda", "lambdameasured", "lambda1", "lambdab1");
        know(Parameter.MEASURED_LAMBDA, "lambdabank1", "equivalenceratiobank1sensor1", "o2sensorlambda", "afr");
        know(Parameter.MEASURED_LAMBDA, "airfuelratio", "widebandlambda", "lambdasensor", "equivalenceratiob1s1");
        know(Parameter.MEASURED_LAMBDA, "oxygensensorequivalenceratio", "wideband", "measuredafr", "lambdaactual");
        know(Parameter.IGNITION_ADVANCE, "sparkadv", "sparkadvance", "ignitionadvance", "ignitiontimingadvance");
        know(Parameter.IGNITION_ADVANCE, "timingadvance", "ignitiontiming", "ignitiontimingadvanceforcylinder1");
        know(Parameter.KNOCK_RETARD, "knockretard", "knockretardation", "knr", "knockcorrection", "sparkknockretard");
        know(Parameter.VEHICLE_SPEED, "vss", "vehiclespeed", "vehiclespeedsensor", "roadspeed", "speed", "vspd");
        know(
                Parameter.INJECTOR_PULSE,
                "injectorpulse",
                "injectorpulsewidth",
                "injpw",
                "ipw",
                "pulsewidth",
                "injectiontime");
        know(Parameter.INJECTOR_PULSE, "injectorpulsewidthbank1", "injectorontime", "injectorpulsewidth1");
        know(
                Parameter.RAIL_PRESSURE,
                "frp",
                "railpressure",
                "fuelrailpressure",
                "fuelpressure",
                "fuelrailgaugepressure");
        know(Parameter.ETHANOL_PERCENT, "alchpct", "ethanol", "ethanolpercent", "ethanolpercentage", "ethanolcontent");
        know(Parameter.ETHANOL_PERCENT, "ethanolfuelpercent", "ethanolfuel", "alcoholfuelpercentage", "ethanolpct");
        know(Parameter.MODULE_VOLTAGE, "vpwr", "controlmodulevoltage", "modulevoltage", "batteryvoltage", "ecuvoltage");
        trim(Parameter.SHORT_TRIM_1, Parameter.SHORT_TRIM_2, "shrtft", "stft", "shorttermfueltrim", "shortfueltrim");
        trim(Parameter.SHORT_TRIM_1, Parameter.SHORT_TRIM_2, "shorttermtrim", "shorttrim", "fueltrimshort");
        trim(Parameter.LONG_TRIM_1, Parameter.LONG_TRIM_2, "longft", "ltft", "longtermfueltrim", "longfueltrim");
        trim(Parameter.LONG_TRIM_1, Parameter.LONG_TRIM_2, "longtermtrim", "longtrim", "fueltrimlong");
    }

    /**
     * What a heading was recognised as.
     *
     * @param unit as it says; null where it says none
     * @param unitText what it says where that is no unit of this parameter; null where it is, or where it says none
     */
    record Named(
            Parameter parameter,
            @Nullable Unit unit,
            @Nullable String unitText) {}

    private Names() {}

    private static void know(Parameter parameter, String... names) {
        for (String name : names) {
            KNOWN.put(name, parameter);
        }
    }

    private static void trim(Parameter first, Parameter second, String... stems) {
        for (String stem : stems) {
            know(first, stem);
            for (String bank : List.of("", "b", "bank")) {
                know(first, stem + bank + "1", bank + "1" + stem);
                know(second, stem + bank + "2", bank + "2" + stem);
            }
        }
    }

    /** The parameter of a heading; null where it is none. */
    static @Nullable Named of(String heading) {
        String text = heading.strip();
        if (text.length() > LONGEST || text.chars().noneMatch(Character::isLetter)) {
            return null;
        }
        Parameter whole = KNOWN.get(plain(text));
        if (whole != null) {
            // a sign is no letter of a name
            boolean isPercent = whole.dimension() == Dimension.PERCENT && text.indexOf('%') >= 0;
            return new Named(whole, isPercent ? Unit.PERCENT : null, null);
        }
        Matcher brackets = BRACKETS.matcher(text);
        String inside = null;
        while (brackets.find()) {
            inside = brackets.group(1);
        }
        Parameter outside =
                inside == null ? null : KNOWN.get(plain(BRACKETS.matcher(text).replaceAll(" ")));
        if (outside != null && inside != null) {
            return named(outside, inside);
        }
        return withUnitAtTheEnd(inside == null ? text : text.replaceAll("[()\\[\\]{}]", " "));
    }

    private static @Nullable Named withUnitAtTheEnd(String text) {
        Matcher breaks = BREAK.matcher(text);
        while (breaks.find()) {
            Parameter parameter = KNOWN.get(plain(text.substring(0, breaks.start())));
            if (parameter != null) {
                Unit unit = Unit.of(parameter.dimension(), text.substring(breaks.end()));
                if (unit != null) {
                    return new Named(parameter, unit, null);
                }
            }
        }
        return null;
    }

    private static Named named(Parameter parameter, String unitText) {
        if (unitText.isBlank()) {
            return new Named(parameter, null, null);
        }
        Unit unit = Unit.of(parameter.dimension(), unitText);
        return new Named(parameter, unit, unit == null ? unitText.strip() : null);
    }

    /** Letters and digits alone. */
    static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        String lower = text.toLowerCase(Locale.ROOT);
        for (int i = 0; i < lower.length(); i++) {
            if (Character.isLetterOrDigit(lower.charAt(i))) {
                plain.append(lower.charAt(i));
            }
        }
        return plain.toString();
    }
}
