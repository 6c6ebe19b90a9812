package org.bayhold.demo;

import java.net.InetAddress;
import java.net.URI;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.context.annotation.Profile;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.web.client.HttpClientErrorException;
import org.springframework.web.client.HttpServerErrorException;

/**
 * Fills an empty shop once, by calling the server's own API. Two servers that start on one database at once send the same
 * calls under the same keys, and so make one shop.
 */
@Component
@Profile("demo")
@Order(2)
class DemoShop implements ApplicationRunner {
    private static final Logger LOG = LoggerFactory.getLogger(DemoShop.class);

    private final DemoSettings settings;
    private final DemoUsers users;
    private final ServerProperties server;
    private final Environment environment;

    DemoShop(DemoSettings settings, DemoUsers users, ServerProperties server, Environment environment) {
        this.settings = settings;
        this.users = users;
        this.server = server;
        this.environment = environment;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        String port = environment.getProperty("local.server.port");
        if (settings.empty() || port == null) {
            return;
        }
        DemoData data = DemoData.read();
        try (DemoCalls calls = new DemoCalls(address(port), users.password())) {
            if (!DemoFilling.isFilled(calls, data)) {
                new DemoFilling(calls, data).fill();
                LOG.info("The demo shop is filled: {} cars", data.cars().size());
            }
        } catch (HttpServerErrorException.ServiceUnavailable e) {
            LOG.warn("The server refuses its own calls, and the demo shop stays as it is");
        } catch (HttpClientErrorException.Unauthorized e) {
            // passwords that nobody set are random: the server that started last has the one that is good
            LOG.info("Another server has started on this database and fills the demo shop");
        } catch (HttpClientErrorException.Conflict | HttpClientErrorException.UnprocessableContent e) {
            // keys are kept for a day, and another version may have other data under them
            LOG.warn("The demo shop was begun and left long ago: start on an empty database to have it whole", e);
        }
    }

    private URI address(String port) {
        InetAddress given = server.getAddress();
        String host = given == null || given.isAnyLocalAddress()
                ? InetAddress.getLoopbackAddress().getHostAddress()
                : given.getHostAddress();
        return URI.create("http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + port);
    }
}
