package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.URI;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bayhold.BayholdApplication;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;

/** The first start without users, outside the demo. */
@ExtendWith(OutputCaptureExtension.class)
class SetUpLinkTest {
    private static final String PASSWORD = "seven hoists and a ramp";

    @Test
    void theLinkMakesOneAdministratorAndIsDead(CapturedOutput log) {
        try (ConfigurableApplicationContext bayhold = new SpringApplicationBuilder(BayholdApplication.class)
                .run(
                        "--server.port=0",
                        "--spring.main.banner-mode=off",
                        "--spring.datasource.url=jdbc:h2:mem:set-up-" + UUID.randomUUID(),
                        "--spring.datasource.username=sa",
                        "--spring.datasource.password=")) {
            int port = ((WebServerApplicationContext) bayhold).getWebServer().getPort();
            String host = InetAddress.getLoopbackAddress().getHostAddress();
            Visitor visitor = new Visitor(URI.create("http://" + host + ":" + port));
            Matcher link = Pattern.compile("/set-up/[A-Za-z0-9_-]{43}").matcher(log.getOut());
            assertThat(link.find()).isTrue();
            String address = link.group();

            assertThat(visitor.opens("/set-up/" + "A".repeat(43)).status()).isEqualTo(404);
            visitor.opens(address).is(200);
            Map<String, String> shortOne = Map.of("username", "Ruth", "password", "short", "passwordAgain", "short");
            assertThat(visitor.sends(address, shortOne).is(400).text())
                    .contains("A password has 15 to 128 characters.");
            Map<String, String> unlike = Map.of("username", "Ruth", "password", PASSWORD, "passwordAgain", "else");
            assertThat(visitor.sends(address, unlike).is(400).text()).contains("The two passwords differ.");
            Map<String, String> right = Map.of("username", "Ruth", "password", PASSWORD, "passwordAgain", PASSWORD);
            assertThat(visitor.sends(address, right).is(200).path()).isEqualTo("/sign-in");

            assertThat(visitor.opens(address).status()).isEqualTo(404);
            assertThat(visitor.signsIn("ruth", PASSWORD).is(200).path()).isEqualTo("/users");
        }
    }
}
