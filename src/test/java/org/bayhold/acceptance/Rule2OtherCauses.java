package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCarOfUnknownHistory;
import static org.bayhold.support.Facts.aStrangeReading;
import static org.bayhold.support.Facts.dealersUpdate;
import static org.bayhold.support.Facts.failedFlash;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.foundFactory;
import static org.bayhold.support.Facts.hoursAgo;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.List;
import java.util.stream.Stream;
import org.bayhold.support.Answer;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.Eventually;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RetuneItem;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** {@code docs/rules.md}, rule 2: what else opens a retune item, or joins the open one. */
public abstract class Rule2OtherCauses implements OnADatabase {

    /** What happens to a finished car. */
    @FunctionalInterface
    interface Event {
        void happens(Shop shop, FinishedCar finished);
    }

    static Stream<Arguments> causes() {
        return Stream.of(
                cause(
                        "a failed flash",
                        "FLASH_FAILED",
                        (shop, finished) -> finished.car().flashes(failedFlash(finished.calibration()))),
                cause(
                        "a flash of a revision that does not cover the build sheet",
                        "FLASH_DOES_NOT_COVER",
                        (shop, finished) -> finished.car().flashes(shop.issues(RevisionDraft.forThe(finished.car())))),
                cause(
                        "a flash of a file that is not ours",
                        "FLASH_NOT_OURS",
                        (shop, finished) -> finished.car().flashes(dealersUpdate())),
                cause(
                        "a flash to reach the dynamometer",
                        "TRANSFER_FLASHED",
                        (shop, finished) -> finished.car()
                                .flashes(shop.issues(RevisionDraft.forThe(finished.car())
                                        .covers(finished.intake())
                                        .with("purpose", "TRANSFER")))),
                cause(
                        "a read-back that differs",
                        "READ_BACK_DIFFERS",
                        (shop, finished) -> finished.car().readsBack(aStrangeReading())),
                cause(
                        "a withdrawn revision on a car",
                        "REVISION_WITHDRAWN",
                        (shop, finished) -> shop.withdraws(finished.calibration())),
                cause(
                        "a late record that makes an earlier flash wrong",
                        "LATE_RECORD",
                        (shop, finished) -> finished.car()
                                .changes(fit(shop.aPartFor("CHARGE_COOLER")).at(hoursAgo(1)))),
                cause(
                        "a corrected part spec",
                        "PART_SPEC_CORRECTED",
                        (shop, finished) -> shop.corrects(finished.intake())),
                cause(
                        "an inspection that contradicts the record",
                        "INSPECTION_CONTRADICTS",
                        (shop, finished) -> finished.car().isInspected(foundFactory("AIR_INTAKE"))),
                cause(
                        "evidence struck out",
                        "EVIDENCE_VOIDED",
                        (shop, finished) -> finished.car().strikesOut(finished.readBack())));
    }

    private static Arguments cause(String words, String code, Event event) {
        return arguments(Named.of(words, event), code);
    }

    @ParameterizedTest
    @MethodSource("causes")
    void opensAnItem(Event event, String code) {
        FinishedCar finished = shop().finishesACar();
        List<String> closed =
                finished.car().items().stream().map(RetuneItem::id).toList();

        event.happens(shop(), finished);

        Eventually.holds(() -> {
            RetuneItem opened = finished.car().openItem();
            assertThat(opened.causes()).contains(code);
            assertThat(closed).doesNotContain(opened.id());
        });
        finished.car().gate().holdsFor("RETUNE_CLEARED");
    }

    @ParameterizedTest
    @MethodSource("causes")
    void joinsTheOpenItem(Event event, String code) {
        FinishedCar finished = shop().finishesACar();
        Answer change = finished.car().fits(shop().aPartFor("DOWNPIPE"));

        event.happens(shop(), finished);

        Eventually.holds(() -> {
            RetuneItem open = finished.car().openItem();
            assertThat(open.id()).isEqualTo(change.field("retuneItemId"));
            assertThat(open.causes()).contains("PART_CHANGED", code);
        });
    }

    @Test
    void anUnknownBaselineOpensAnItem() {
        Car car = shop().registers(aCarOfUnknownHistory());

        assertThat(car.openItem().causes()).containsExactly("UNKNOWN_BASELINE");
        car.gate().holdsFor("PARTS_KNOWN", "RETUNE_CLEARED");
    }

    @Test
    void aCauseJoinsTheItemOfAnUnknownBaseline() {
        Car car = shop().registers(aCarOfUnknownHistory());
        RetuneItem item = car.openItem();

        Answer change = car.fits(shop().aPartFor("AIR_INTAKE"));

        assertThat(change.field("retuneItemId")).isEqualTo(item.id());
        assertThat(car.openItem().causes()).containsExactly("UNKNOWN_BASELINE", "PART_CHANGED");
    }

    @Test
    void aLateRecordThatTheFlashedRevisionCoversOpensNone() {
        FinishedCar finished = shop().finishesACar();

        Answer late = finished.car().changes(fit(finished.intake()).at(hoursAgo(1)));

        assertThat(late.field("retuneItemId")).isEmpty();
        assertThat(finished.car().findOpenItem()).isEmpty();
        finished.car().gate().isClear();
    }

    @Test
    void aFlashThatCoversAndAReadBackThatMatchesOpenNone() {
        FinishedCar finished = shop().finishesACar();
        Part intake = finished.intake();
        Calibration next = shop().issues(RevisionDraft.forThe(finished.car()).covers(intake));

        finished.car().flashes(next);
        finished.car().readsBack(next);

        assertThat(finished.car().findOpenItem()).isEmpty();
    }

    @Test
    void anInspectionThatConfirmsTheRecordOpensNone() {
        FinishedCar finished = shop().finishesACar();

        Answer inspection = finished.car().isInspectedThroughout(finished.intake());

        assertThat(Answer.elements(inspection.json().path("differences"))).isEmpty();
        assertThat(inspection.field("retuneItemId")).isEmpty();
        finished.car().gate().isClear();
    }

    @Test
    void anInspectionSaysWhatDiffers() {
        FinishedCar finished = shop().finishesACar();

        Answer inspection = finished.car().isInspected(foundFactory("AIR_INTAKE"), foundFactory("TURBOCHARGER"));

        assertThat(inspection.json().path("differences").toString())
                .contains("AIR_INTAKE")
                .doesNotContain("TURBOCHARGER");
        assertThat(inspection.field("retuneItemId"))
                .isEqualTo(finished.car().openItem().id());
        assertThat(finished.car().stateOf("AIR_INTAKE")).isEqualTo("FACTORY");
    }
}
