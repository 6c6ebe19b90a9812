package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.bayhold.support.Body;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A manager sets what the shop asks for; nobody else does. docs/rules.md, "Gate checks". */
public abstract class PolicyOnAPage implements OnADatabase {
    private static final Map<String, String> USUAL = Map.of(
            "readBackRequired", "YES",
            "readBackMaxAgeHours", "24",
            "troubleCodesChecked", "YES",
            "driveLogRequired", "NO",
            "acknowledgementRequired", "YES",
            "secondPersonRequired", "NO");

    @AfterEach
    void asUsual() {
        shop().as(Role.MANAGER)
                .put("/policy", Body.of("readBackMaxAgeHours", 24).with("secondPersonRequired", false))
                .is(200);
    }

    @Test
    void aManagerSetsThePolicyAndThePageSaysWhoDid() {
        Visitor manager = shop().visitor(Role.MANAGER);
        assertThat(manager.opens("/policy").is(200).text())
                .contains("How old the ECU check may be", "Usual: 24 hours.", "Cosmetic");

        Visitor.Shown set =
                manager.sends("/policy", with("readBackMaxAgeHours", "48")).is(200);

        assertThat(set.text()).contains("Set. It holds from now on.", ": 48 h, before 24 h.", "manager");
        assertThat(shop().policy().path("readBackMaxAgeHours").asInt()).isEqualTo(48);
        assertThat(shop().policy().path("readBackRequired").asBoolean()).isTrue();
    }

    @Test
    void aThresholdIsSetAndTheDefaultsAreFilledInAndSet() {
        String field = "driveLogThresholds.cruiseTrimPercent";
        Visitor manager = shop().visitor(Role.MANAGER);
        assertThat(manager.opens("/policy").is(200).text())
                .contains("All as usual.", "Full load belongs on a dynamometer", "Default: 1.5 s. Takes 1 s … 10 s.");

        String set = manager.sends("/policy", with(field, "4.25")).is(200).text();

        assertThat(set)
                .contains("Mean correction at cruise: 4.25 %, before 5 %.", "One differs from its default.")
                .contains("Not the default");
        assertThat(cruiseTrim()).isEqualTo(4.25);
        assertThat(shop().visitor(Role.WRITER).opens("/policy").is(200).text())
                .contains("One differs from its default.", "Mean correction at cruise Not the default", "4.25 % 5 %");

        String filled = manager.opens("/policy?driveLog=defaults").is(200).text();
        assertThat(filled).contains("The defaults are filled in.");
        assertThat(cruiseTrim()).as("reading sets nothing").isEqualTo(4.25);
        assertThat(manager.sends("/policy", with(field, "5")).is(200).text())
                .contains("All as usual.", "Mean correction at cruise: 5 %, before 4.25 %.");
        assertThat(cruiseTrim()).isEqualTo(5);
    }

    @Test
    void aThresholdOutOfRangeIsRefusedAtItsField() {
        Visitor manager = shop().visitor(Role.MANAGER);
        Visitor.Shown ignored = manager.opens("/policy").is(200);

        assertThat(manager.sends("/policy", with("driveLogThresholds.dutyPercent", "101"))
                        .is(400)
                        .html())
                .contains("driveLogThresholds.dutyPercent-error");
        assertThat(shop().policy()
                        .path("driveLogThresholds")
                        .path("dutyPercent")
                        .doubleValue())
                .isEqualTo(85);
    }

    @Test
    void whatIsOutOfRangeIsRefusedAtItsField() {
        Visitor manager = shop().visitor(Role.MANAGER);
        Visitor.Shown ignored = manager.opens("/policy").is(200);

        assertThat(manager.sends("/policy", with("readBackMaxAgeHours", "0"))
                        .is(400)
                        .html())
                .contains("readBackMaxAgeHours-error");
        assertThat(manager.sends("/policy", with("secondPersonRequired", "PERHAPS"))
                        .is(400)
                        .html())
                .contains("class=\"error\"");
        assertThat(shop().policy().path("readBackMaxAgeHours").asInt()).isEqualTo(24);
    }

    @Test
    void aPageThatIsStaleSetsNothing() {
        Visitor one = shop().visitor(Role.MANAGER);
        Visitor other = shop().visitor(Role.MANAGER);
        Visitor.Shown first = one.opens("/policy").is(200);
        Visitor.Shown second = other.opens("/policy").is(200);
        assertThat(first.path()).isEqualTo(second.path());

        one.sends("/policy", with("readBackMaxAgeHours", "36")).is(200);

        assertThat(other.sends("/policy", with("secondPersonRequired", "YES"))
                        .is(412)
                        .text())
                .contains("Somebody else has set the policy");
        assertThat(shop().policy().path("readBackMaxAgeHours").asInt()).isEqualTo(36);
        assertThat(shop().policy().path("secondPersonRequired").asBoolean()).isFalse();
    }

    @Test
    void othersReadItAndDoNotSetIt() {
        Visitor writer = shop().visitor(Role.WRITER);
        assertThat(writer.opens("/policy").is(200).html()).doesNotContain("Set the policy");
        // with the token of a form that writers have
        Visitor.Shown ignored = writer.opens("/parts/new").is(200);
        writer.sends("/policy", with("secondPersonRequired", "YES")).is(403);
        assertThat(shop().policy().path("secondPersonRequired").asBoolean()).isFalse();
    }

    private double cruiseTrim() {
        return shop().policy()
                .path("driveLogThresholds")
                .path("cruiseTrimPercent")
                .doubleValue();
    }

    private static Map<String, String> with(String field, String value) {
        Map<String, String> typed = new HashMap<>(USUAL);
        typed.put(field, value);
        return typed;
    }
}
