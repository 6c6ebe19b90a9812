package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;

import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/** {@code docs/rules.md}, "Categories and effect groups": a manager moves a category to NO_EFFECT, or from it. */
public abstract class Categories implements OnADatabase {
    private static final String COSMETIC = "COSMETIC";

    @Test
    void aCategoryCountsFromItsMoveOnAndNotBefore() {
        Car car = shop().registers(aCar());
        Part wing = shop().aPartFor(COSMETIC);
        assertThat(car.fits(wing).field("retuneItemId")).as("before the move").isEmpty();

        assertThat(move(false).field("group")).isEqualTo("UNSORTED");
        try {
            assertThat(group()).isEqualTo("UNSORTED");
            assertThat(car.fits(wing).field("retuneItemId"))
                    .as("after the move")
                    .isNotEmpty();
        } finally {
            assertThat(move(true).field("group")).isEqualTo("NO_EFFECT");
        }
        assertThat(group()).isEqualTo("NO_EFFECT");
    }

    @Test
    void aMoveNeedsAReason() {
        shop().as(Role.MANAGER)
                .post("/categories/" + COSMETIC + "/moves", Body.of("noEffect", true))
                .isInvalid("reason");
    }

    @Test
    void onlyWhatIsACategoryMoves() {
        shop().as(Role.MANAGER)
                .post("/categories/HORN/moves", Body.of("noEffect", true).with("reason", "it is loud"))
                .isInvalid("category");
    }

    private Answer move(boolean noEffect) {
        return shop().as(Role.MANAGER)
                .post(
                        "/categories/" + COSMETIC + "/moves",
                        Body.of("noEffect", noEffect).with("reason", "a wing that ducts air to the intake"))
                .is(201);
    }

    private String group() {
        return Answer.elements(
                        shop().as(Role.AUDITOR).get("/categories").is(200).json())
                .stream()
                .filter(category -> Answer.textOf(category.path("category")).equals(COSMETIC))
                .map(category -> Answer.textOf(category.path("group")))
                .findFirst()
                .orElseThrow();
    }
}
