package org.bayhold.support;

/**
 * A factory car that got another intake, was flashed for it, read back and signed off; nothing fails at its gate.
 *
 * @param install the answer to the change of the intake
 * @param flash the answer to the flash that the sign-off rests on
 * @param readBack the answer to the read-back that the sign-off rests on
 */
public record FinishedCar(
        Car car, Part intake, Calibration calibration, Answer install, Answer flash, Answer readBack) {}
