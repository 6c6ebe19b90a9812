package org.bayhold.support;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.bayhold.BayholdApplication;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.util.FileSystemUtils;

/**
 * The whole application with the demo users and an empty shop, started once for each kind of database and shared by all
 * tests of that kind. Tests make cars of their own, and put back what they change for the whole shop.
 */
public final class RunningBayhold {
    private static final String PASSWORD = "of-the-bench-" + UUID.randomUUID();

    private final ConfigurableApplicationContext context;
    private final AnyPostgres.Database database;
    private final Shop shop;

    private RunningBayhold(AnyPostgres.Database database) {
        this.database = database;
        this.context = start(
                "--spring.datasource.url=" + database.url(),
                "--spring.datasource.username=" + database.user(),
                "--spring.datasource.password=" + database.password());
        int port = ((WebServerApplicationContext) context).getWebServer().getPort();
        String host = InetAddress.getLoopbackAddress().getHostAddress();
        this.shop = new Shop(URI.create("http://" + host + ":" + port), PASSWORD);
        shop.asksForNoDriveLogs();
    }

    public static RunningBayhold onH2() {
        return OnH2.RUNNING;
    }

    public static RunningBayhold onPostgres() {
        return OnPostgres.RUNNING;
    }

    public Shop shop() {
        return shop;
    }

    /** Something of the running application itself, for a test that is made from what it finds there. */
    public <T> T bean(String name, Class<T> type) {
        return context.getBean(name, type);
    }

    /** Past the application, as somebody with the database's password would come. */
    public Connection connect() throws SQLException {
        return database.connect();
    }

    public <T> T bean(Class<T> type) {
        return context.getBean(type);
    }

    private static ConfigurableApplicationContext start(String... database) {
        List<String> arguments = new ArrayList<>(List.of(
                "--server.port=0",
                "--spring.main.banner-mode=off",
                "--bayhold.demo.empty=true",
                "--bayhold.demo.password=" + PASSWORD));
        arguments.addAll(List.of(database));
        return new SpringApplicationBuilder(BayholdApplication.class)
                .profiles("demo")
                .run(arguments.toArray(String[]::new));
    }

    private static final class OnH2 {
        static final RunningBayhold RUNNING = new RunningBayhold(
                new AnyPostgres.Database("jdbc:h2:file:" + folder().resolve("bayhold") + ";WRITE_DELAY=0", "sa", ""));

        private static Path folder() {
            try {
                Path folder = Files.createTempDirectory("bayhold-h2-");
                SpringApplication.getShutdownHandlers().add(() -> FileSystemUtils.deleteRecursively(folder.toFile()));
                return folder;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private static final class OnPostgres {
        static final RunningBayhold RUNNING = new RunningBayhold(AnyPostgres.freshDatabase(RunningBayhold.class));
    }
}
