package org.bayhold.support;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.bayhold.BayholdApplication;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.util.FileSystemUtils;

/** The whole application for one test alone, on a database of the test's own; whoever starts it closes it. */
public final class FreshBayhold implements AutoCloseable {
    private static final String PASSWORD = "of-the-bench-" + UUID.randomUUID();

    private final Store store;
    private final ConfigurableApplicationContext context;
    private final Shop shop;

    /** A database that nobody else uses, and how to reach it. */
    public record Store(String url, String user, String password) {
        public static Store h2() {
            try {
                Path folder = Files.createTempDirectory("bayhold-h2-");
                SpringApplication.getShutdownHandlers().add(() -> FileSystemUtils.deleteRecursively(folder.toFile()));
                return h2In(folder);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /** In a file {@code bayhold.mv.db} of this folder, with the settings that application.yml has for H2. */
        public static Store h2In(Path folder) {
            String url = "jdbc:h2:file:" + folder.resolve("bayhold") + ";WRITE_DELAY=0;LOCK_TIMEOUT=5000";
            return new Store(url, "sa", "");
        }

        public static Store postgres(Class<?> owner) {
            AnyPostgres.Database database = AnyPostgres.freshDatabase(owner);
            return new Store(database.url(), database.user(), database.password());
        }

        public Connection connect() throws SQLException {
            return DriverManager.getConnection(url, user, password);
        }
    }

    private FreshBayhold(Store store, Consumer<GenericApplicationContext> more, String... settings) {
        List<String> arguments = new ArrayList<>(List.of(
                "--server.port=0",
                "--spring.main.banner-mode=off",
                "--bayhold.demo.password=" + PASSWORD,
                "--spring.datasource.url=" + store.url(),
                "--spring.datasource.username=" + store.user(),
                "--spring.datasource.password=" + store.password()));
        arguments.addAll(List.of(settings));
        this.store = store;
        this.context = new SpringApplicationBuilder(BayholdApplication.class)
                .profiles("demo")
                .initializers(fresh -> more.accept((GenericApplicationContext) fresh))
                .run(arguments.toArray(String[]::new));
        int port = ((WebServerApplicationContext) context).getWebServer().getPort();
        String host = InetAddress.getLoopbackAddress().getHostAddress();
        this.shop = new Shop(URI.create("http://" + host + ":" + port), PASSWORD);
        shop.asksForNoDriveLogs();
    }

    /** With the demo users and no cars. */
    public static FreshBayhold withoutCars(Store store) {
        return withoutCars(store, fresh -> {});
    }

    /** @param more adds to the application what it does not have by itself */
    public static FreshBayhold withoutCars(Store store, Consumer<GenericApplicationContext> more) {
        return new FreshBayhold(store, more, "--bayhold.demo.empty=true");
    }

    /** With the invented shop. */
    public static FreshBayhold withTheDemoShop(Store store) {
        return new FreshBayhold(store, fresh -> {});
    }

    public Shop shop() {
        return shop;
    }

    public <T> T bean(Class<T> type) {
        return context.getBean(type);
    }

    public <T> ObjectProvider<T> beans(Class<T> type) {
        return context.getBeanProvider(type);
    }

    /** Past the application, as somebody with the database's password would come. */
    public Connection connect() throws SQLException {
        return store.connect();
    }

    @Override
    public void close() {
        context.close();
    }
}
