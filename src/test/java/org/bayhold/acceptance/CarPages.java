package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;

import java.util.Map;
import java.util.UUID;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.FinishedCar;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.Role;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.Test;

/** The day's list, a car's page, the search, and registering a car. */
public abstract class CarPages implements OnADatabase {
    @Test
    void aCarOnHoldSaysWhatItWaitsForAndADifferenceComesFirst() {
        FinishedCar finished = shop().finishesACar();
        Part injectors = shop().aPartFor("INJECTORS");
        finished.car().fits(injectors);
        String page = shop().visitor(Role.TECH)
                .opens("/cars/" + finished.car().id())
                .is(200)
                .text();
        assertThat(page).contains("HOLD", "What it waits for", "Flash for the parts on the car");
        String sheet = page.substring(page.indexOf("Build sheet beside"));
        assertThat(sheet.indexOf(injectors.partNumber()))
                .isPositive()
                .isLessThan(sheet.indexOf(finished.intake().partNumber()));
    }

    @Test
    void aStruckOutRecordIsShownStruckWithItsReason() {
        Car car = shop().registers(aCar());
        Answer change = car.fits(shop().aPartFor("INJECTORS"));
        car.strikesOut(change.id(), Body.of("reason", "booked on the wrong car"));
        Visitor.Shown page =
                shop().visitor(Role.WRITER).opens("/cars/" + car.id()).is(200);
        assertThat(page.html()).contains("<s>Part change: installed");
        assertThat(page.text()).contains("Struck out by manager", "booked on the wrong car");
    }

    @Test
    void buttonsAreOnlyForWhatTheRoleMayDo() {
        Car car = shop().registers(aCar());
        String asWriter = shop().visitor(Role.WRITER).opens("/cars/" + car.id()).html();
        String asTechnician =
                shop().visitor(Role.TECH).opens("/cars/" + car.id()).html();
        String asAuditor =
                shop().visitor(Role.AUDITOR).opens("/cars/" + car.id()).html();
        assertThat(asWriter).contains("/install\"", "/hand-over\"").doesNotContain("/flash\"");
        assertThat(asTechnician).contains("/install\"", "/flash\"").doesNotContain("/hand-over\"");
        assertThat(asAuditor).doesNotContain("/install\"", "/flash\"", "/hand-over\"", "/strike-out");
    }

    @Test
    void aCarThatLeftIsNoLongerInTheShopAndNamesItsCertificate() {
        FinishedCar finished = shop().finishesACar();
        String handoff = finished.car().handsOver().id();
        Visitor writer = shop().visitor(Role.WRITER);
        String today = writer.opens("/today").is(200).html();
        int gone = today.indexOf("Left in the last seven days");
        assertThat(today.indexOf("/handoffs/" + handoff + "/certificate")).isGreaterThan(gone);
        assertThat(today.indexOf("/cars/" + finished.car().id())).isGreaterThan(gone);
        assertThat(writer.opens("/handoffs/" + handoff + "/certificate").is(200).text())
                .contains("Release certificate");
    }

    @Test
    void theSearchFindsTradeWordsAndOpensASingleCar() {
        Visitor writer = shop().visitor(Role.WRITER);
        assertThat(writer.opens("/search?q=intercooler").is(200).text())
                .contains("Charge cooler (intercooler)", "CHARGE_COOLER");
        Car car = shop().registers(aCar());
        assertThat(writer.opens("/search?q=" + car.vin()).is(200).path()).isEqualTo("/cars/" + car.id());
        assertThat(writer.opens("/cars/new?vin=" + car.vin()).is(200).path()).isEqualTo("/cars/" + car.id());
    }

    @Test
    void aRefusedRegistrationKeepsWhatWasTypedAtItsFields() {
        Visitor writer = shop().visitor(Role.WRITER);
        writer.opens("/cars/new?vin=").is(200);
        Visitor.Shown refused = writer.sends(
                "/cars/new",
                Map.of(
                        "vin",
                        "1M8GDM9AXKP04278",
                        "description",
                        "Ostrava Pike",
                        "odometerKm",
                        "many",
                        "plate",
                        "AB 1"));
        assertThat(refused.is(400).html()).contains("value=\"1M8GDM9AXKP04278\"", "value=\"Ostrava Pike\"", "\"AB 1\"");
        assertThat(refused.text()).contains("Type a whole number.", "This is needed.");
    }

    @Test
    void aCarIsRegisteredOnceHoweverOftenTheButtonIsPressed() {
        Visitor writer = shop().visitor(Role.WRITER);
        writer.opens("/cars/new?vin=").is(200);
        Map<String, String> form = writer.hidden();
        String frame = "F-" + UUID.randomUUID().toString().substring(0, 12);
        form.putAll(Map.of(
                "frameNumber", frame,
                "description", "Ostrava Pike",
                "ecuHardware", "HX-1",
                "baseline", "FACTORY",
                "customer.name", "Dora Finch"));
        Visitor.Shown first = writer.sendsOnly("/cars/new", form, "same-origin").is(200);
        Visitor.Shown second =
                writer.sendsOnly("/cars/new", form, "same-origin").is(200);
        assertThat(first.path()).startsWith("/cars/").isEqualTo(second.path());
        assertThat(first.text()).contains("The car is registered.");
    }

    @Test
    void anAddressThatIsNoneGetsAPageAndNoProblem() {
        Visitor.Shown nothing =
                shop().visitor(Role.WRITER).opens("/cars/" + UUID.randomUUID()).is(404);
        assertThat(nothing.text()).contains("There is no car with this id.");
        assertThat(shop().visitor(Role.WRITER).opens("/cars/none").is(404).text())
                .contains("Nothing here");
    }

    @Test
    void whoeverDoesNotSeeTheOwnersContactsCannotEraseThem() {
        Car car = shop().registers(aCar());
        Visitor technician = shop().visitor(Role.TECH);
        String path = "/cars/" + car.id() + "/particulars";
        assertThat(technician.opens(path).is(200).text()).doesNotContain("+1 555 0142");

        Map<String, String> typed =
                Map.of("version", version(car), "plate", "TECH 1", "customer.name", "Somebody Else");
        technician.sends(path, typed).is(200);

        tools.jackson.databind.JsonNode now =
                shop().as(Role.MANAGER).get("/vehicles/" + car.id()).json();
        assertThat(now.path("plate").asString()).isEqualTo("TECH 1");
        assertThat(now.path("customer").path("name").asString()).isEqualTo("Ines Halvorsen");
        assertThat(now.path("customer").path("phone").asString()).isEqualTo("+1 555 0142");
    }

    private String version(Car car) {
        return shop().as(Role.MANAGER).get("/vehicles/" + car.id()).field("version");
    }

    @Test
    void aPlaceThatNoPageOffersIsRefusedAndChangesNothing() {
        Car car = shop().registers(aCar());
        Visitor writer = shop().visitor(Role.WRITER);
        int before = car.history().size();
        for (String page : new String[] {"inspect", "install"}) {
            String path = "/cars/" + car.id() + "/" + page;
            writer.opens(path).is(200);
            writer.sends(path, Map.of("lines[0].place", "NO_SUCH", "lines[0].found", "FACTORY", "lines[0].note", "x"))
                    .is(400);
        }
        assertThat(car.history()).hasSize(before);
    }
}
