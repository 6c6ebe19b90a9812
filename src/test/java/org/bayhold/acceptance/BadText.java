package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.remove;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.support.Answer;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests that are no requests: broken, hostile or meant for somebody else. Nothing changes by them. */
public abstract class BadText implements OnADatabase {
    private Car car;
    private int recordsBefore;

    @BeforeEach
    void aFactoryCar() {
        car = shop().registers(aCar());
        recordsBefore = car.history().size();
    }

    static Stream<Arguments> brokenJson() {
        String change = remove("AIR_FILTER").toString();
        return Stream.of(
                broken("an object that does not end", change.substring(0, change.length() - 1)),
                broken("something after the object", change + "}"),
                broken("no object", "[]"),
                broken("a bare word", "AIR_FILTER"),
                broken("nothing", ""),
                broken("null", "null"),
                broken("a list of a thousand lists", "{\"note\":" + "[".repeat(1_000) + "]".repeat(1_000) + "}"),
                broken("a hundred thousand open objects", "{\"note\":".repeat(100_000)),
                broken("a number of a hundred thousand digits", "{\"odometerKm\":" + "9".repeat(100_000) + "}"),
                broken("an object where text belongs", "{\"category\":{\"category\":\"AIR_FILTER\"}}"));
    }

    private static Arguments broken(String words, String body) {
        return arguments(Named.of(words, body));
    }

    @ParameterizedTest
    @MethodSource("brokenJson")
    void brokenJsonIsRefused(String body) {
        shop().as(Role.WRITER).post(car.path("part-changes"), body).isProblem(400, "invalid");
        nothingChanged();
    }

    @ParameterizedTest
    @ValueSource(strings = {"\\u0000", "\\ud800", "\\udc00", "a\\udbffb", "\\udc00\\ud800"})
    void textThatNotEveryDatabaseCanKeepIsRefused(String escaped) {
        String body =
                "{\"category\":\"AIR_FILTER\",\"action\":\"REMOVE\",\"source\":\"SHOP\",\"note\":\"" + escaped + "\"}";

        shop().as(Role.WRITER).post(car.path("part-changes"), body).isInvalid("note");

        nothingChanged();
    }

    @Test
    void bytesThatAreNoUtf8AreRefused() {
        byte[] body = remove("AIR_FILTER").with("note", "caf_").toString().getBytes(StandardCharsets.US_ASCII);
        for (int i = 0; i < body.length; i++) {
            body[i] = body[i] == '_' && body[i - 1] == 'f' ? (byte) 0xE9 : body[i];
        }

        shop().as(Role.WRITER).postBytes(car.path("part-changes"), body).isProblem(400, "invalid");

        nothingChanged();
    }

    @Test
    void aBodyOfMoreThanAMegabyteIsRefused() {
        String body = remove("AIR_FILTER").with("note", "n".repeat(1_500_000)).toString();

        Answer refused = shop().as(Role.WRITER).post(car.path("part-changes"), body);

        assertThat(refused.status()).isIn(400, 413);
        nothingChanged();
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/plain", "application/xml", "application/x-www-form-urlencoded"})
    void anotherMediaTypeIsRefused(String type) {
        shop().as(Role.WRITER)
                .withHeader("Content-Type", type)
                .post(car.path("part-changes"), remove("AIR_FILTER"))
                .isProblem(415, "unsupported");
        nothingChanged();
    }

    @ParameterizedTest
    @ValueSource(strings = {"part-changes", "flashes", "read-backs", "inspections", "acknowledgements", "handoffs"})
    void aCarWhoseIdIsNoneIsRefused(String below) {
        shop().as(Role.MANAGER)
                .post("/vehicles/seventeen/" + below, remove("AIR_FILTER"))
                .isProblem(400, "invalid");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "/gate", "/build-sheet", "/history", "/retune-items", "/handoffs"})
    void aCarThatIsNotThereIsNotFound(String below) {
        shop().as(Role.WRITER).get("/vehicles/" + UUID.randomUUID() + below).isProblem(404, "not-found");
        shop().as(Role.WRITER).get("/vehicles/seventeen" + below).isProblem(400, "invalid");
    }

    @Test
    void whatIsRecordedForACarThatIsNotThereIsRefused() {
        shop().as(Role.WRITER)
                .post("/vehicles/" + UUID.randomUUID() + "/part-changes", remove("AIR_FILTER"))
                .isProblem(404, "not-found");
    }

    @Test
    void aPathThatIsNoneIsNotFound() {
        shop().as(Role.WRITER).get("/vehicle").isProblem(404, "not-found");
    }

    @ParameterizedTest
    @ValueSource(strings = {"' or '1'='1", "%", "_", "\\", "<script>alert(1)</script>", "{}", "\u202e"})
    void aSearchForStrangeTextFindsNothingAndHarmsNothing(String text) {
        Answer found = shop().as(Role.WRITER).get("/vehicles?q=" + Shop.encoded("no-such-" + text));

        assertThat(found.is(200).json().path("items").isEmpty()).isTrue();
        nothingChanged();
    }

    private void nothingChanged() {
        assertThat(car.history()).hasSize(recordsBefore);
        assertThat(car.findOpenItem()).isEmpty();
        car.gate().isClear();
    }
}
