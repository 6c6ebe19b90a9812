package org.bayhold.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import org.bayhold.refusal.Refusal;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Car;
import org.bayhold.support.Facts;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;

/** A server starts on a record that somebody changed, and refuses. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@ExtendWith(OutputCaptureExtension.class)
class BrokenRecordTest {
    @TempDir
    static Path folder;

    private Path tamperedFolder;
    private String carId;
    private String changed;
    private long entries;
    private FreshBayhold refusing;

    @BeforeAll
    void aRecordIsCopiedAndChanged() throws IOException, SQLException {
        Path good = Files.createDirectory(folder.resolve("good"));
        tamperedFolder = Files.createDirectory(folder.resolve("tampered"));
        try (FreshBayhold running = FreshBayhold.withoutCars(FreshBayhold.Store.h2In(good))) {
            Car car = running.shop().registers(Facts.aCar());
            carId = car.id();
            changed = car.changes(Facts.adjust("WASTEGATE")).id();
        }
        Files.copy(good.resolve("bayhold.mv.db"), tamperedFolder.resolve("bayhold.mv.db"));
        try (FreshBayhold whole = FreshBayhold.withoutCars(FreshBayhold.Store.h2In(good))) {
            whole.shop().as(Role.WRITER).get("/vehicles/" + carId).is(200);
            Answer health = whole.shop().anonymous().getOutside("/actuator/health/readiness");
            assertThat(health.is(200).field("status")).isEqualTo("UP");
        }
        execute("drop trigger fact_append_only", "update fact set category = 'COSMETIC' where id = '" + changed + "'");
        entries = countEntries();
        refusing = FreshBayhold.withoutCars(FreshBayhold.Store.h2In(tamperedFolder));
    }

    @AfterAll
    void close() {
        refusing.close();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/v1/vehicles",
                "/api/v1/journal/verification",
                "/v3/api-docs",
                "/css/certificate.css",
                "/actuator/prometheus",
                "/actuator",
                "/actuator/healthy",
                "/actuator/health/%2e%2e/%2e%2e/api/v1/vehicles",
                "/actuator/health/..;/..;/api/v1/vehicles",
                "/",
                "/nothing/here"
            })
    void everyAddressRefuses(String path) {
        Answer answer = refusing.shop().anonymous().getOutside(path).isProblem(503, "unavailable");

        assertThat(answer.field("detail")).contains("restore the last backup");
        assertThat(answer.header("Retry-After")).isNotEmpty();
    }

    @Test
    void nobodySignsInOrWrites() throws SQLException {
        refusing.shop().guesses("manager", "whatever").isProblem(503, "unavailable");
        refusing.shop()
                .anonymous()
                .post("/vehicles/" + carId + "/arrivals", "{}")
                .isProblem(503, "unavailable");

        assertThat(countEntries()).isEqualTo(entries);
    }

    /** Whatever comes past the filter: a job, a runner at the start. */
    @Test
    void theApplicationItselfWritesNothing() {
        WriteTemplate writes = refusing.bean(WriteTemplate.class);
        WriteRequest request = WriteRequest.internal(UUID.randomUUID());

        assertThatThrownBy(() -> writes.write(request, UUID.fromString(carId), String.class, chain -> "written"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("record.broken");
        assertThat(refusing.bean(FollowUps.class).open()).isEmpty();
    }

    @Test
    void aBrowserGetsAPageThatSaysWhatToDo() {
        Api browser = refusing.shop().anonymous().withHeader("Accept", "text/html,application/xhtml+xml,*/*;q=0.8");

        Answer page = browser.getOutside("/").is(503);

        assertThat(page.header("Content-Type")).startsWith("text/html");
        assertThat(page.text())
                .contains(changed)
                .contains(carId)
                .contains("Restore the last backup")
                .contains("Call whoever runs this server")
                .doesNotContain("??");
    }

    @Test
    void healthIsTold() {
        Api anybody = refusing.shop().anonymous();

        assertThat(anybody.getOutside("/actuator/health").is(503).field("status"))
                .isEqualTo("OUT_OF_SERVICE");
        assertThat(anybody.getOutside("/actuator/health/readiness").is(503).field("status"))
                .isEqualTo("OUT_OF_SERVICE");
        assertThat(anybody.getOutside("/actuator/health/liveness").is(200).field("status"))
                .isEqualTo("UP");
    }

    @Test
    void theLogNamesTheFirstBrokenEntry(CapturedOutput output) {
        // with the demo shop: what fills it at the start meets the refusal, and the server stays up all the same
        try (FreshBayhold again = FreshBayhold.withTheDemoShop(FreshBayhold.Store.h2In(tamperedFolder))) {
            again.shop().anonymous().get("/vehicles").isProblem(503, "unavailable");
        }

        assertThat(output.getAll().lines().filter(line -> line.contains("ERROR")))
                .anySatisfy(line -> assertThat(line)
                        .contains("THE RECORD IS BROKEN")
                        .contains(changed)
                        .contains(carId)
                        .contains("its row in fact has another value in column category"));
    }

    private long countEntries() throws SQLException {
        try (Connection connection = FreshBayhold.Store.h2In(tamperedFolder).connect();
                Statement statement = connection.createStatement();
                ResultSet count = statement.executeQuery("select count(*) from journal_entry")) {
            count.next();
            return count.getLong(1);
        }
    }

    private void execute(String... statements) throws SQLException {
        try (Connection connection = FreshBayhold.Store.h2In(tamperedFolder).connect();
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }
}
