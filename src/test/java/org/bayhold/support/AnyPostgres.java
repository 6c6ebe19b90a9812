package org.bayhold.support;

import com.github.dockerjava.api.model.Image;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.springframework.boot.SpringApplication;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.containers.ContainerLaunchException;
import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;

/**
 * PostgreSQL for tests, one server for the whole JVM: a container where Docker answers and holds an image of PostgreSQL
 * (none is ever pulled), else the binaries that come with the test dependencies. Either way the server is durable, as a
 * shop's would be. The system property {@code bayhold.test.postgres} may say {@code container} or {@code embedded}.
 */
public final class AnyPostgres {
    private static final List<String> DURABLE = List.of("fsync", "full_page_writes", "synchronous_commit");
    private static final AtomicInteger DATABASES = new AtomicInteger();

    private AnyPostgres() {}

    /** One database of the server and how to reach it. */
    public record Database(String url, String user, String password) {
        public Connection connect() throws SQLException {
            return DriverManager.getConnection(url, user, password);
        }
    }

    /** A new, empty database. {@code owner} shows in its name. */
    public static Database freshDatabase(Class<?> owner) {
        String name = owner.getSimpleName().toLowerCase(Locale.ROOT).replaceAll("\\W", "") + "_"
                + DATABASES.incrementAndGet();
        Server server = Server.THE_ONE;
        try (Connection connection = server.admin().connect();
                Statement statement = connection.createStatement()) {
            statement.execute("create database " + name);
        } catch (SQLException e) {
            throw new IllegalStateException("no database " + name, e);
        }
        String url = server.admin().url().replaceFirst("/[^/?]+(\\?|$)", "/" + name + "$1");
        return new Database(url, server.admin().user(), server.admin().password());
    }

    /** "container" or "embedded". */
    public static String kind() {
        return Server.THE_ONE.kind();
    }

    private record Server(String kind, Database admin) {
        static final Server THE_ONE = start();

        private static Server start() {
            Server server = wanted("embedded")
                    ? embedded()
                    : localImage().flatMap(Server::container).orElseGet(Server::embeddedUnlessForbidden);
            System.out.println("PostgreSQL for tests: " + server.kind + ", " + server.show("server_version"));
            for (String setting : DURABLE) {
                if (!server.show(setting).equals("on")) {
                    throw new IllegalStateException(setting + " is off on the test server");
                }
            }
            return server;
        }

        private static boolean wanted(String kind) {
            return System.getProperty("bayhold.test.postgres", "").equals(kind);
        }

        /** Empty where the engine answers and the container does not come up all the same. */
        private static Optional<Server> container(String image) {
            PostgreSQLContainer container =
                    new PostgreSQLContainer(DockerImageName.parse(image).asCompatibleSubstituteFor("postgres"));
            container.withCommand("postgres"); // the default command turns fsync off
            try {
                container.start();
            } catch (ContainerLaunchException e) {
                System.out.println("PostgreSQL for tests: no container, " + e);
                return Optional.empty();
            }
            // not a JVM hook: those run while contexts still close and wait for connections
            SpringApplication.getShutdownHandlers().add(container::stop);
            return Optional.of(new Server(
                    "container of " + image,
                    new Database(container.getJdbcUrl(), container.getUsername(), container.getPassword())));
        }

        private static Server embeddedUnlessForbidden() {
            if (wanted("container")) {
                throw new IllegalStateException(
                        "a container is wanted, but Docker holds no image of PostgreSQL that comes up");
            }
            return embedded();
        }

        private static Server embedded() {
            try {
                EmbeddedPostgres.Builder builder = EmbeddedPostgres.builder().setLocaleConfig("locale", "C.UTF-8");
                DURABLE.forEach(setting -> builder.setServerConfig(setting, "on"));
                EmbeddedPostgres server = builder.start();
                SpringApplication.getShutdownHandlers().add(() -> close(server));
                return new Server(
                        "embedded", new Database(server.getJdbcUrl("postgres", "postgres"), "postgres", "postgres"));
            } catch (IOException e) {
                throw new IllegalStateException("the embedded PostgreSQL did not start", e);
            }
        }

        private static void close(EmbeddedPostgres server) {
            try {
                server.close();
            } catch (IOException e) {
                System.err.println("the embedded PostgreSQL did not stop: " + e);
            }
        }

        private String show(String setting) {
            try (Connection connection = admin.connect();
                    Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery("show " + setting)) {
                rows.next();
                return rows.getString(1);
            } catch (SQLException e) {
                throw new IllegalStateException("the test server does not say " + setting, e);
            }
        }

        /** An image that Docker already has: a missing one would cost minutes on a machine without a network. */
        private static Optional<String> localImage() {
            try {
                return DockerClientFactory.lazyClient().listImagesCmd().exec().stream()
                        .flatMap(Server::tags)
                        .filter(tag -> tag.matches("(.*/)?postgres:\\d.*"))
                        .sorted()
                        .reduce((a, b) -> b);
            } catch (RuntimeException e) { // no Docker, or no right to use it
                System.out.println("PostgreSQL for tests: no container, " + firstLine(e));
                return Optional.empty();
            }
        }

        private static Stream<String> tags(Image image) {
            String[] tags = image.getRepoTags();
            return tags == null ? Stream.empty() : Arrays.stream(tags);
        }

        private static String firstLine(RuntimeException e) {
            return String.valueOf(e.getMessage()).lines().findFirst().orElse("");
        }
    }
}
