package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;
import org.bayhold.support.Api;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.Test;

/** Sign-in by form, sessions, and what protects the forms. */
public abstract class SigningInPages implements OnADatabase {
    private static final String GOOD = "four lamps over the bench";

    @Test
    void whoeverIsNotSignedInIsAskedToAndThenSeesThePageAskedFor() {
        Visitor writer = shop().visitor();
        assertThat(writer.opens("/cars/new").is(200).path()).isEqualTo("/sign-in");
        Visitor.Shown after =
                writer.sends("/sign-in", Map.of("username", Role.WRITER.user(), "password", shop().password()));
        assertThat(after.is(200).path()).isEqualTo("/cars/new");
        assertThat(after.text()).contains("Register a car");
    }

    @Test
    void aWrongPasswordSignsNobodyIn() {
        Visitor stranger = shop().visitor();
        assertThat(stranger.signsIn("nobody-" + UUID.randomUUID(), "not this one at all")
                        .is(401)
                        .text())
                .contains("Name or password is wrong.");
        assertThat(stranger.opens("/users").path()).isEqualTo("/sign-in");
    }

    @Test
    void signingOutEndsTheSession() {
        Visitor writer = shop().newVisitor(Role.WRITER);
        Visitor.Shown today = writer.opens("/today").is(200);
        String token = today.html().replaceAll("(?s).*?name=\"_csrf\" value=\"([^\"]+)\".*", "$1");
        assertThat(writer.sendsOnly("/sign-out", Map.of("_csrf", token), "same-origin")
                        .text())
                .contains("You are signed out.");
        assertThat(writer.opens("/today").path()).isEqualTo("/sign-in");
    }

    @Test
    void aPageAsksForTheRoleAsTheApiDoes() {
        Visitor.Shown refused = shop().visitor(Role.WRITER).opens("/users").is(403);
        assertThat(refused.text()).contains("Your role may not do this");
        assertThat(refused.headers().get("content-type").get(0)).startsWith("text/html");
        shop().visitor(Role.ADMIN).opens("/users").is(200);
        shop().visitor(Role.ADMIN).opens("/today").is(403);
        shop().visitor(Role.AUDITOR).opens("/cars/new").is(403);
    }

    @Test
    void aFormWithoutItsTokenIsRefused() {
        Visitor admin = shop().visitor(Role.ADMIN);
        String name = name();
        Map<String, String> fields = Map.of("username", name, "password", GOOD, "roles", "WRITER");
        admin.sendsOnly("/users", fields, "cross-site").is(403);
        admin.sendsOnly("/users", fields, "same-origin").is(401);
        assertThat(admin.opens("/users").text()).doesNotContain(name);
    }

    @Test
    void whatWasTypedOutlivesTheSession() {
        Visitor admin = shop().visitor(Role.ADMIN);
        admin.opens("/users").is(200);
        String name = name();
        admin.losesTheSession();
        Visitor.Shown ended = admin.sends("/users", Map.of("username", name, "password", GOOD, "roles", "TECHNICIAN"));
        assertThat(ended.is(401).text()).contains("nothing was recorded yet");
        assertThat(ended.html()).doesNotContain(GOOD);
        Visitor.Shown again =
                admin.sends("/sign-in", Map.of("username", Role.ADMIN.user(), "password", shop().password()));
        assertThat(again.is(200).text()).contains("You are signed in again").contains(name);
        Visitor.Shown sent = admin.sends("/users", Map.of());
        assertThat(sent.is(400).html()).contains("value=\"" + name + "\"");
        assertThat(sent.text()).contains("A password has 15 to 128 characters.");
    }

    @Test
    void aSecondClickMakesOneUser() {
        Visitor admin = shop().visitor(Role.ADMIN);
        admin.opens("/users").is(200);
        String name = name();
        Map<String, String> form = admin.hidden();
        form.putAll(Map.of("username", name, "password", GOOD, "roles", "WRITER"));
        assertThat(admin.sendsOnly("/users", form, "same-origin").is(200).text())
                .contains(name + " can sign in now.");
        assertThat(admin.sendsOnly("/users", form, "same-origin").is(200).text())
                .contains(name + " can sign in now.");
        assertThat(shop().visitor().signsIn(name, GOOD).is(200).path()).isEqualTo("/");
    }

    @Test
    void aPasswordThatManyThinkOfIsRefused() {
        Visitor admin = shop().visitor(Role.ADMIN);
        for (String common :
                new String[] {"Correct Horse Battery Staple", "abcabcabcabcabcabc", "password_123456789"}) {
            admin.opens("/users").is(200);
            Map<String, String> typed = Map.of("username", name(), "password", common, "roles", "WRITER");
            assertThat(admin.sends("/users", typed).is(400).text()).contains("Many people think of this password.");
        }
    }

    @Test
    void theApiTakesNoCookieAndThePagesTakeNoToken() {
        Visitor writer = shop().visitor(Role.WRITER);
        writer.opens("/api/v1/vehicles").is(401);
        Api token = shop().as(Role.WRITER);
        assertThat(token.get(writer.address("/today")).status()).isEqualTo(302);
    }

    @Test
    void pagesSayWhatABrowserMayLoadAndHideTheirCookieFromScripts() {
        Visitor.Shown signIn = shop().visitor().opens("/sign-in").is(200);
        assertThat(signIn.headers().get("content-security-policy").get(0))
                .isEqualTo("default-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none';"
                        + " form-action 'self'");
        assertThat(signIn.headers().get("set-cookie").get(0)).contains("HttpOnly", "SameSite=Lax");
        assertThat(signIn.html()).doesNotContain("<style", " style=", " onclick=", "<script>");
    }

    @Test
    void whoeverMayNoLongerSignInIsOutAtTheNextClick() {
        Visitor admin = shop().visitor(Role.ADMIN);
        String name = name();
        admin.opens("/users");
        admin.sends("/users", Map.of("username", name, "password", GOOD, "roles", "WRITER"))
                .is(200);
        Visitor writer = shop().visitor();
        writer.signsIn(name, GOOD).is(200);
        writer.opens("/cars/new").is(200);

        String page = pageOf(admin, name);
        admin.opens(page).is(200);
        admin.sends(page, Map.of("roles", "AUDITOR", "enabled", "true")).is(200);
        writer.opens("/cars/new").is(403);
        writer.opens("/today").is(200);
        admin.opens(page).is(200);
        admin.sends(page, Map.of("roles", "AUDITOR")).is(200);
        assertThat(writer.opens("/today").path()).isEqualTo("/sign-in");
        assertThat(shop().visitor().signsIn(name, GOOD).is(401).text()).contains("Name or password is wrong.");
    }

    @Test
    void aNewPasswordEndsTheSessionsOfTheOldOne() {
        Visitor admin = shop().visitor(Role.ADMIN);
        String name = name();
        admin.opens("/users");
        admin.sends("/users", Map.of("username", name, "password", GOOD, "roles", "WRITER"))
                .is(200);
        Visitor elsewhere = shop().visitor();
        elsewhere.signsIn(name, GOOD).is(200);
        Visitor here = shop().visitor();
        here.signsIn(name, GOOD).is(200);
        String other = "six jacks under the ramp";

        here.opens("/password").is(200);
        here.sends("/password", Map.of("password", "not this one", "newPassword", other, "passwordAgain", other))
                .is(400);
        assertThat(here.sends("/password", Map.of("password", GOOD, "newPassword", other, "passwordAgain", other))
                        .is(200)
                        .text())
                .contains("The new password holds from now on.");
        here.opens("/today").is(200);
        assertThat(elsewhere.opens("/today").path()).isEqualTo("/sign-in");
        shop().visitor().signsIn(name, GOOD).is(401);
        shop().visitor().signsIn(name, other).is(200);
    }

    @Test
    void anAdministratorCannotLockEverybodyOut() {
        Visitor admin = shop().visitor(Role.ADMIN);
        String page = pageOf(admin, Role.ADMIN.user());
        admin.opens(page).is(200);
        assertThat(admin.sends(page, Map.of("roles", "WRITER", "enabled", "true"))
                        .is(409)
                        .text())
                .contains("You would lock yourself out.");
        admin.opens("/users").is(200);
    }

    private static String pageOf(Visitor admin, String name) {
        return admin.opens("/users").html().replaceAll("(?s).*href=\"(/users/[^\"]+)\">" + name + "<.*", "$1");
    }

    private static String name() {
        return "u" + UUID.randomUUID().toString().substring(0, 12);
    }
}
