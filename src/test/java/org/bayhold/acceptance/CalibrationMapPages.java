package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.bayhold.support.Body;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** <i>Issue a calibration</i> with several maps, and the calibration's page after it. */
public abstract class CalibrationMapPages implements OnADatabase {
    private static final String NEW = "/calibrations/new";

    private Visitor calibrator;
    private Part fuel;
    private Map<String, String> typed;

    @BeforeEach
    void aCalibratorTypesARevision() {
        fuel = shop().aPartFor("FUEL");
        calibrator = shop().visitor(Role.CALIBRATOR);
        assertThat(calibrator.opens(NEW).is(200).html()).doesNotContain("maps[0]");
        Body revision = RevisionDraft.forEcu("HW-MAPS").toSend();
        typed = new HashMap<>();
        for (String field : List.of("name", "revision", "ecuHardware", "calid", "cvn", "purpose")) {
            typed.put(field, revision.text(field));
        }
        typed.put("lines[0].parts", fuel.maker() + " " + fuel.partNumber() + " A");
    }

    private Visitor.Shown pressesAddAMap() {
        Map<String, String> all = new HashMap<>(typed);
        all.put("map", "1");
        return calibrator.sends(NEW, all).is(200);
    }

    private Visitor.Shown issues(int status) {
        return calibrator.sends(NEW, typed).is(status);
    }

    @Test
    void eachPressAddsAMapAndKeepsWhatWasTyped() {
        typed.put("maps[0].name", "Street");
        String html = pressesAddAMap().html();
        assertThat(html)
                .contains("name=\"maps[0].name\"", "value=\"Street\"", "name=\"maps[1].name\"", "Map 2")
                .doesNotContain("maps[2]");
        assertThat(html).contains(fuel.partNumber());
    }

    @Test
    void whatWasTypedIsIssuedAndShown() {
        typed.put("maps[0].name", "Street");
        typed.put("maps[0].fuels", fuel.maker() + " " + fuel.partNumber());
        typed.put("maps[0].note", "the blue button");
        typed.put("maps[2].name", "Valet");
        String page = issues(200).text();
        assertThat(page).contains("The calibration is issued.", "Street", fuel.partNumber(), "the blue button");
        assertThat(page.substring(page.indexOf("Valet"))).contains("every fuel that it covers");
    }

    /** Also where an empty map above it gives it another number in the request. */
    @ParameterizedTest
    @MethodSource("wrongFields")
    void aRefusalStandsAtItsFieldAndNothingIsIssued(String field, String value) {
        typed.put("maps[0].name", "");
        typed.put("maps[1].name", "Flex");
        typed.put(field, value);
        assertThat(issues(400).html())
                .contains("id=\"" + field + "\"", "id=\"" + field + "-error\"", "href=\"#" + field + "\"");
        assertThat(shop().as(Role.WRITER).list("/calibrations?q=" + Shop.encoded(typed.get("name"))))
                .isEmpty();
    }

    static Stream<Arguments> wrongFields() {
        return Stream.of(
                arguments("maps[1].factoryFuel", "true"),
                arguments("maps[1].fuels", "no such fuel"),
                arguments("maps[1].note", "n".repeat(501)),
                arguments("maps[1].name", "n".repeat(61)),
                arguments("maps[2].name", "FLEX"),
                arguments("lines[0].position", "p".repeat(61)));
    }

    @Test
    void aFuelThatIsNotCoveredIsSaidBesideTheFuels() {
        typed.put("maps[1].name", "Street");
        typed.put("maps[1].fuels", shop().aPartFor("FUEL").partNumber());
        Visitor.Shown refused = issues(400);
        assertThat(refused.html()).contains("id=\"maps[1].fuels-error\"");
        assertThat(refused.text()).contains("The calibration does not cover");
    }

    @Test
    void aNamelessMapAskedToHoldAFuelNeedsAName() {
        typed.put("maps[0].factoryFuel", "true");
        assertThat(issues(400).html()).contains("id=\"maps[0].name-error\"");
    }

    @Test
    void aFactoryFuelThatIsNotCoveredIsSaidBesideItsBox() {
        typed.put("maps[0].name", "Valet");
        typed.put("maps[0].factoryFuel", "true");
        assertThat(issues(400).text()).contains("The calibration does not cover the factory fuel");
        typed.put("lines[0].factoryAllowed", "true");
        assertThat(issues(200).text()).contains("the factory fuel");
    }

    @Test
    void aPageOfARevisionWithoutMapsHasNoTableOfThem() {
        assertThat(issues(200).html()).doesNotContain("every fuel that it covers", "<caption>Maps");
    }
}
