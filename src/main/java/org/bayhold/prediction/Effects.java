package org.bayhold.prediction;

import static org.bayhold.catalog.PartAttributes.VENTS_TO;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartAttributes.Vent;

/** What has no formula still has a direction, said in words. {@code docs/prediction.md, P16}. */
final class Effects {
    private static final Set<Category> KNOWN_DIRECTION = EnumSet.of(
            Category.BYPASS_VALVE,
            Category.BOOST_CONTROL,
            Category.WASTEGATE,
            Category.TURBOCHARGER,
            Category.DOWNPIPE,
            Category.EXHAUST_MANIFOLD,
            Category.EMISSIONS_EQUIPMENT,
            Category.CAMSHAFT,
            Category.CYLINDER_HEAD,
            Category.ROTATING_ASSEMBLY,
            Category.ECU,
            Category.OXYGEN_SENSOR,
            Category.FUEL_PUMP);

    private Effects() {}

    static List<Sentence> of(List<Seat> differing) {
        List<Sentence> words = new ArrayList<>();
        for (Seat seat : differing) {
            Sentence effect = new Sentence("prediction.effect." + seat.category(), List.of());
            if (KNOWN_DIRECTION.contains(seat.category()) && !keepsMeteredAir(seat) && !words.contains(effect)) {
                words.add(effect);
            }
        }
        return words;
    }

    private static boolean keepsMeteredAir(Seat seat) {
        return seat.category() == Category.BYPASS_VALVE
                && VENTS_TO.in(seat.fitted().attributes())
                        .filter(Vent.INTAKE::equals)
                        .isPresent();
    }
}
