package org.bayhold.prediction;

import org.bayhold.catalog.Place;

/** What one place contributes to one ratio of the chain. */
record Share(Place place, Link link, Factor factor) {
    /** The ratios of the chain. {@code docs/prediction.md, P2}. */
    enum Link {
        AIR_METER,
        FUEL_DELIVERY,
        STOICHIOMETRIC
    }
}
