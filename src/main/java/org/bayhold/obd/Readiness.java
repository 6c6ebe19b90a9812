package org.bayhold.obd;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What the ECUs say of themselves since their codes were cleared last: the warning lamp, and the monitors that watch the
 * exhaust (SAE J1979, service 01, PID 01; bits from memory, names as public code of readers has them).
 *
 * @param milOn the lamp is lit by one of them at least
 */
public record Readiness(boolean milOn, List<State> monitors) {
    /** The first three run all the time, the next eight on a spark-ignition engine, the last six on the others. */
    public enum Monitor {
        MISFIRE,
        FUEL_SYSTEM,
        COMPONENTS,
        CATALYST,
        HEATED_CATALYST,
        EVAPORATIVE_SYSTEM,
        SECONDARY_AIR,
        /** The air conditioner's refrigerant in older editions. */
        GASOLINE_PARTICULATE_FILTER,
        OXYGEN_SENSOR,
        OXYGEN_SENSOR_HEATER,
        EXHAUST_RECIRCULATION,
        NMHC_CATALYST,
        NOX_AFTERTREATMENT,
        BOOST_PRESSURE,
        EXHAUST_GAS_SENSOR,
        PARTICULATE_FILTER,
        RECIRCULATION_OR_VALVE_TIMING
    }

    /** @param complete it has run since the codes were cleared; false where it is not supported */
    public record State(Monitor monitor, boolean supported, boolean complete) {}

    private static final List<Monitor> CONTINUOUS = List.of(Monitor.MISFIRE, Monitor.FUEL_SYSTEM, Monitor.COMPONENTS);

    /** By bit of the third and the fourth byte. */
    private static final Map<Integer, Monitor> SPARK = Map.of(
            0, Monitor.CATALYST,
            1, Monitor.HEATED_CATALYST,
            2, Monitor.EVAPORATIVE_SYSTEM,
            3, Monitor.SECONDARY_AIR,
            4, Monitor.GASOLINE_PARTICULATE_FILTER,
            5, Monitor.OXYGEN_SENSOR,
            6, Monitor.OXYGEN_SENSOR_HEATER,
            7, Monitor.EXHAUST_RECIRCULATION);

    private static final Map<Integer, Monitor> COMPRESSION = Map.of(
            0, Monitor.NMHC_CATALYST,
            1, Monitor.NOX_AFTERTREATMENT,
            3, Monitor.BOOST_PRESSURE,
            5, Monitor.EXHAUST_GAS_SENSOR,
            6, Monitor.PARTICULATE_FILTER,
            7, Monitor.RECIRCULATION_OR_VALVE_TIMING);

    private static final int IS_COMPRESSION = 1 << 3;
    private static final int MIL = 1 << 7;

    public Readiness {
        monitors = List.copyOf(monitors);
    }

    /** Of several ECUs together: one that has not finished keeps the car from being ready. */
    static Readiness of(Collection<Message> answers) {
        boolean lit = false;
        Map<Monitor, State> states = new EnumMap<>(Monitor.class);
        for (Message answer : answers) {
            lit |= (answer.at(2) & MIL) != 0;
            read(answer).forEach(state -> states.merge(state.monitor(), state, Readiness::both));
        }
        return new Readiness(lit, List.copyOf(states.values()));
    }

    private static List<State> read(Message answer) {
        int common = answer.at(3);
        List<State> states = new ArrayList<>();
        for (int bit = 0; bit < CONTINUOUS.size(); bit++) {
            states.add(state(CONTINUOUS.get(bit), common, common >> 4, bit));
        }
        Map<Integer, Monitor> others = (common & IS_COMPRESSION) == 0 ? SPARK : COMPRESSION;
        others.forEach((bit, monitor) -> states.add(state(monitor, answer.at(4), answer.at(5), bit)));
        return states;
    }

    private static State state(Monitor monitor, int supported, int unfinished, int bit) {
        boolean has = (supported >> bit & 1) == 1;
        return new State(monitor, has, has && (unfinished >> bit & 1) == 0);
    }

    private static State both(State one, State other) {
        if (one.supported && other.supported) {
            return new State(one.monitor, true, one.complete && other.complete);
        }
        return one.supported ? one : other;
    }
}
