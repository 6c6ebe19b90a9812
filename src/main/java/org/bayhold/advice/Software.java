package org.bayhold.advice;

import org.bayhold.buildsheet.InEcu;

/** What a question is held against. */
enum Software {
    /** A revision of the shop's. */
    REVISION,
    FACTORY,
    UNKNOWN,
    NOT_OURS,
    /** The last flash failed. */
    FAILED;

    static Software of(Hypothesis car) {
        return car.revision().isPresent() ? REVISION : car.after().inEcu().match(new Kinds());
    }

    private static final class Kinds implements InEcu.Cases<Software> {
        @Override
        public Software factory(InEcu.Factory in) {
            return FACTORY;
        }

        @Override
        public Software unknown(InEcu.Unknown in) {
            return UNKNOWN;
        }

        @Override
        public Software flashed(InEcu.Flashed in) {
            return REVISION;
        }

        @Override
        public Software found(InEcu.Found in) {
            return REVISION;
        }

        @Override
        public Software notOurs(InEcu.NotOurs in) {
            return NOT_OURS;
        }

        @Override
        public Software failed(InEcu.Failed in) {
            return FAILED;
        }
    }
}
