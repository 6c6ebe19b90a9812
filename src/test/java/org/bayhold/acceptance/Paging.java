package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aPart;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.bayhold.support.Answer;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.Test;

/** Lists come page by page, nothing twice and nothing left out. */
public abstract class Paging implements OnADatabase {
    private final String word = "fleet" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void everyCarStandsOnOnePage() {
        List<String> registered = registers(120);

        List<Answer> pages = shop().as(Role.WRITER).pages("/vehicles?q=" + word);

        assertThat(pages).hasSizeGreaterThan(1);
        assertThat(idsOf(pages)).containsExactlyInAnyOrderElementsOf(registered);
    }

    @Test
    void whatIsRegisteredMeanwhileMovesNothing() {
        List<String> registered = registers(120);
        Answer first = shop().as(Role.WRITER).get("/vehicles?q=" + word).is(200);
        assertThat(first.field("next")).isNotEmpty();

        registers(3);

        List<Answer> pages = new ArrayList<>(List.of(first));
        pages.addAll(shop().as(Role.WRITER).pagesAfter(first.field("next"), "/vehicles?q=" + word));
        List<String> ids = idsOf(pages);
        assertThat(ids).doesNotHaveDuplicates().containsAll(registered);
    }

    @Test
    void theCatalogueComesInPagesToo() {
        List<String> catalogued = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            catalogued.add(
                    shop().catalogues(aPart("SPARK_PLUGS").with("maker", word)).id());
        }

        assertThat(idsOf(shop().as(Role.WRITER).pages("/part-specs?category=SPARK_PLUGS&q=" + word)))
                .containsExactlyInAnyOrderElementsOf(catalogued);
    }

    @Test
    void aPlaceInTheListThatIsNoneIsRefused() {
        shop().as(Role.WRITER).get("/vehicles?q=" + word + "&after=%00nonsense").isInvalid("after");
    }

    private List<String> registers(int cars) {
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < cars; i++) {
            ids.add(shop().registers(aCar().with("description", "car of " + word))
                    .id());
        }
        return ids;
    }

    private static List<String> idsOf(List<Answer> pages) {
        return pages.stream()
                .flatMap(page -> Answer.elements(page.json().path("items")).stream())
                .map(item -> Answer.textOf(item.path("id")))
                .toList();
    }
}
