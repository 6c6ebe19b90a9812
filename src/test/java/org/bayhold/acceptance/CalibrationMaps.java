package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Answer.elements;
import static org.bayhold.support.Answer.textOf;

import java.util.List;
import java.util.UUID;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** The maps of a calibration: docs/rules.md, "Maps". */
public abstract class CalibrationMaps implements OnADatabase {
    private static RevisionDraft draft() {
        return RevisionDraft.forEcu("HW-MAPS");
    }

    private Answer isSent(RevisionDraft draft) {
        return shop().as(Role.CALIBRATOR).post("/calibrations", draft.toSend());
    }

    /** Refused at the field, and not issued. */
    private void isRefused(RevisionDraft draft, String field) {
        Answer ignored = isSent(draft).isInvalid(field);
        String name = draft.toSend().text("name");
        assertThat(shop().as(Role.CALIBRATOR).list("/calibrations?q=" + Shop.encoded(name)))
                .isEmpty();
    }

    @Test
    void mapsAreKeptAsGivenAndInTheirOrder() {
        Part street = shop().aPartFor("FUEL");
        Part race = shop().aPartFor("FUEL");
        Body valet = Body.of("name", "  Valet ").with("factoryFuel", true).with("note", "for the garage next door");
        Answer issued = isSent(draft().coversOrFactory(street, race)
                        .withMap("2", race, street, race)
                        .withMap(valet)
                        .withMap("1"))
                .is(201);

        Answer found = shop().as(Role.TECH).get("/calibrations/" + issued.id()).is(200);

        assertThat(found.json().path("maps")).isEqualTo(issued.json().path("maps"));
        List<JsonNode> maps = elements(found.json().path("maps"));
        assertThat(maps).extracting(map -> textOf(map.path("name"))).containsExactly("2", "Valet", "1");
        assertThat(elements(maps.get(0).path("fuels")))
                .extracting(JsonNode::asString)
                .containsExactly(race.id(), street.id());
        assertThat(maps).extracting(map -> map.path("factoryFuel").asBoolean()).containsExactly(false, true, false);
        assertThat(maps)
                .extracting(map -> textOf(map.path("note")))
                .containsExactly("", "for the garage next door", "");
        assertThat(maps.get(2).path("fuels")).isEmpty();
    }

    @Test
    void aRevisionWithoutMapsNamesNone() {
        Answer issued = isSent(draft()).is(201);
        assertThat(issued.json().path("maps").isArray()).isTrue();
        assertThat(issued.json().path("maps")).isEmpty();
    }

    @Test
    void aRevisionWithMapsIsAnsweredWholeWithItsCoverageAmongOthers() {
        Part fuel = shop().aPartFor("FUEL");
        Part intake = shop().aPartFor("AIR_INTAKE");
        Answer first = isSent(draft().with("ecuHardware", "HW-MAPS-LIST")
                        .covers(intake)
                        .covers(fuel)
                        .withMap("1", fuel)
                        .withMap("2"))
                .is(201);
        Answer second = isSent(draft().with("ecuHardware", "HW-MAPS-LIST").covers(intake))
                .is(201);

        List<JsonNode> found = shop().as(Role.TECH).list("/calibrations?ecuHardware=HW-MAPS-LIST");

        assertThat(found).containsExactlyInAnyOrder(first.json(), second.json());
    }

    @Test
    void aRevisionThatNamesNoFuelLeavesOpenWhichItsMapsAreFor() {
        isSent(draft().withMap(Body.of("name", "1")
                        .with("fuels", List.of(shop().aPartFor("FUEL").id()))
                        .with("factoryFuel", true)))
                .is(201);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "  ", "1234567890123456789012345678901234567890123456789012345678901"})
    void aMapNeedsANameOfAtMostSixty(String name) {
        isRefused(draft().withMap("1").withMap(name), "maps[1].name");
    }

    @ParameterizedTest
    @CsvSource({"Street 98,street 98", "Street 98,Street  98", "STRASSE,strasse"})
    void twoMapsOfARevisionDoNotShareAName(String first, String second) {
        isRefused(draft().withMap(first).withMap("2").withMap(second), "maps[2].name");
    }

    @Test
    void twentyMapsAreTheMost() {
        RevisionDraft draft = draft();
        for (int i = 1; i <= 20; i++) {
            draft = draft.withMap(String.valueOf(i));
        }
        isRefused(draft.withMap("21"), "maps");
        isSent(draft).is(201);
    }

    @Test
    void aFuelOfAMapIsOneOfTheCatalogue() {
        Body unknown =
                Body.of("name", "1").with("fuels", List.of(UUID.randomUUID().toString()));
        isRefused(draft().withMap(unknown), "maps[0].fuels[0]");
        isRefused(
                draft().withMap("1").withMap("2", shop().aPartFor("FUEL"), shop().aPartFor("INJECTORS")),
                "maps[1].fuels[1]");
    }

    @Test
    void aFuelOfAMapIsOneThatTheRevisionCovers() {
        Part covered = shop().aPartFor("FUEL");
        Part other = shop().aPartFor("FUEL");
        isRefused(draft().covers(covered).withMap("1", covered, other), "maps[0].fuels[1]");
    }

    @Test
    void theFactoryFuelIsForAMapOnlyWhereTheRevisionAllowsIt() {
        Part covered = shop().aPartFor("FUEL");
        Body map = Body.of("name", "1").with("factoryFuel", true);
        isRefused(draft().covers(covered).withMap(map), "maps[0].factoryFuel");
        isSent(draft().coversOrFactory(covered).withMap(map)).is(201);
    }

    @Test
    void aNoteOfAMapIsShort() {
        isRefused(draft().withMap(Body.of("name", "1").with("note", "n".repeat(501))), "maps[0].note");
    }
}
