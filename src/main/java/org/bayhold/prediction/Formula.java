package org.bayhold.prediction;

/** The formulas of {@code docs/prediction.md}, each with its rule there and its source. */
public enum Formula {
    HOUSING("(sensorBoreMm_cal / sensorBoreMm_inst)^2", "P5", "equal air speed at the sensor, flow by area"),
    TRANSFER("f_cal(f_inst^-1(flowGPerS)) / flowGPerS", "P6", "Fritsch and Carlson 1980"),
    TRANSFER_WORST("the ratio that is farthest from 1", "P6", "house rule"),
    BAND("10 where the surroundings are recorded and equal, else 20", "P7", "published transfer tables"),
    BOOST_READING("(z_cal + k_cal * (p_true - z_inst) / k_inst) / p_true", "P9", "linear sensors"),
    BOOST_REACHED("z_inst + k_inst * (target - z_cal) / k_cal", "P9", "linear sensors"),
    BOOST_EXCESS("(boostReachedKpa / boostTargetKpa - 1) * 100", "P9", "definition"),
    PRESSURE_OVER_ATMOSPHERE("basePressureKpa - manifoldGaugeKpa", "P11", "definition"),
    MANIFOLD_GAUGE("boostTargetKpa - barometricKpa", "P11", "definition"),
    INJECTOR_FLOW(
            "(flow_inst / sqrt(rated_inst)) / (flow_cal / sqrt(rated_cal))", "P10", "orifice equation, ISO 5167 form"),
    DEAD_TIME("(pulseMs - deadTimeMs_inst) / (pulseMs - deadTimeMs_cal)", "P12", "SAE J1832, terms"),
    INJECTORS_AT_IDLE("flow ratio * dead time ratio", "P12", "definition"),
    FUEL_PRESSURE("sqrt(pressureKpa_inst / pressureKpa_cal)", "P11", "orifice equation, ISO 5167 form"),
    FUEL_DENSITY("sqrt(density_inst / density_cal)", "P13", "orifice equation, ISO 5167 form"),
    BLEND_DENSITY("v * 0.789 + (1 - v) * 0.745", "P13", "US DOE alternative fuels data table, range"),
    BLEND_STOICHIOMETRY("w * 9.00 + (1 - w) * 14.7, w by mass", "P13", "US DOE alternative fuels data table"),
    STOICHIOMETRIC_RATIO("stoich_cal / stoich_inst", "P13", "definition"),
    AIR_METER_RATIO("product of the parts", "P3", "definition"),
    AIR_METER_RATIO_AT_IDLE("product of the parts, at idle", "P3", "definition"),
    FUEL_DELIVERY_RATIO("product of the parts", "P3", "definition"),
    FUEL_DELIVERY_RATIO_AT_IDLE("product of the parts, at idle", "P3", "definition"),
    LAMBDA("stoichiometricRatio / (airMeterRatio * fuelDeliveryRatio)", "P2", "definition of lambda"),
    LAMBDA_AT_IDLE("the same, with the ratios at idle", "P2", "definition of lambda"),
    LAMBDA_LOW("lambda / (1 + airMeterBandPercent / 100)", "P7", "house rule"),
    LAMBDA_HIGH("lambda / (1 - airMeterBandPercent / 100)", "P7", "house rule"),
    TRIM_DEMAND("(lambda - 1) * 100", "P15", "SAE J1979, sign of a trim"),
    AUTHORITY_USED("|trimDemandPercent| / trimAuthorityPercent * 100", "P15", "definition"),
    LAMBDA_LEFT("lambda / (1 + trim / 100), trim no more than the authority", "P15", "definition"),
    INJECTOR_DUTY(
            "airflow / (lambda * stoich) / count / density * 60 / (flow * sqrt(pressure / rated)) * 100",
            "P14",
            "mass balance; orifice equation, ISO 5167 form");

    private final String text;
    private final String rule;
    private final String source;

    Formula(String text, String rule, String source) {
        this.text = text;
        this.rule = rule;
        this.source = source;
    }

    public String text() {
        return text;
    }

    /** Of the number that comes out; empty where it is a ratio. */
    public String unit() {
        return switch (this) {
            case BAND, BOOST_EXCESS, TRIM_DEMAND, AUTHORITY_USED, INJECTOR_DUTY -> "%";
            case BOOST_REACHED, PRESSURE_OVER_ATMOSPHERE, MANIFOLD_GAUGE -> "kPa";
            case BLEND_DENSITY -> "kg/l";
            default -> "";
        };
    }

    /** The rule of {@code docs/prediction.md}. */
    public String rule() {
        return rule;
    }

    public String source() {
        return source;
    }
}
