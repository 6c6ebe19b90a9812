package org.bayhold.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Answer.elements;
import static org.bayhold.support.Answer.textOf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;

/** The invented shop has a car for each situation that the rules know, and is filled once. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class DemoShopContract {
    /** Of each car: the gate's decision, why its retune is open, and how it left, by what it is there to show. */
    private static final Map<String, String> SITUATIONS = Map.ofEntries(
            Map.entry("a part was fitted today, and its retune is open", "HOLD [PART_CHANGED] in"),
            Map.entry("flashed, waiting for the ECU check", "HOLD [PART_CHANGED] in"),
            Map.entry("read back, waiting for the sign-off", "HOLD [PART_CHANGED] in"),
            Map.entry("signed off, waiting for the customer's acknowledgement", "HOLD [] in"),
            Map.entry("two injector rails, everything done, ready to be handed over", "CLEAR [] in"),
            Map.entry("handed over CLEAR", "HOLD [] CLEAR"),
            Map.entry("out on a trailer, by exception", "HOLD [PART_CHANGED] EXCEPTION"),
            Map.entry("the flash failed", "HOLD [FLASH_FAILED, PART_CHANGED] in"),
            Map.entry("a dealer wrote a file that nobody ordered", "HOLD [FLASH_NOT_OURS] in"),
            Map.entry("nobody knows what is on it", "HOLD [UNKNOWN_BASELINE] in"),
            Map.entry("handed over, and then its calibration was withdrawn", "HOLD [REVISION_WITHDRAWN] CLEAR"),
            Map.entry("the ECU reports something else than was flashed", "HOLD [PART_CHANGED, READ_BACK_DIFFERS] in"),
            Map.entry(
                    "a part on it was corrected in the catalogue after the sign-off", "HOLD [PART_SPEC_CORRECTED] in"),
            Map.entry(
                    "the customer put the stock part back at home, which the calibration still covers", "CLEAR [] in"),
            Map.entry("a new engine that is being run in, out with its limits", "HOLD [] CLEAR"),
            Map.entry("flashed for the dynamometer only", "HOLD [PART_CHANGED, TRANSFER_FLASHED] in"),
            Map.entry(
                    "another intake and other injectors than its calibration was written for, which pictures tell",
                    "HOLD [PART_CHANGED] in"),
            Map.entry("an install written down a day late, after the car had left", "HOLD [LATE_RECORD] CLEAR"),
            Map.entry("a European VIN, and a record of the wrong car that was struck out", "CLEAR [] in"),
            Map.entry(
                    "a frame number and no VIN; the customer reports another fuel by telephone",
                    "HOLD [PART_CHANGED] in"),
            Map.entry("everything done, and the ECU keeps a trouble code of the mixture", "HOLD [] in"),
            Map.entry("as its maker built it", "CLEAR [] in"));

    private final FreshBayhold.Store store = store();
    private FreshBayhold bayhold;

    abstract FreshBayhold.Store store();

    @BeforeAll
    void start() throws Exception {
        bayhold = begin();
    }

    /** How the shop is filled. */
    FreshBayhold begin() throws Exception {
        return FreshBayhold.withTheDemoShop(store);
    }

    @AfterAll
    void close() {
        bayhold.close();
    }

    @Test
    void everySituationHasItsCar() {
        assertThat(situations(bayhold.shop())).containsExactlyInAnyOrderEntriesOf(SITUATIONS);
    }

    @Test
    void whatIsWaitedForIsWhatTheCarIsThereToShow() {
        Map<String, List<String>> failing = new LinkedHashMap<>();
        byWhatTheyShow(bayhold.shop()).forEach((shows, id) -> failing.put(shows, failing(id)));

        assertThat(failing)
                .containsEntry(
                        "flashed, waiting for the ECU check",
                        List.of("READ_BACK_MATCHES", "RETUNE_CLEARED", "CUSTOMER_ACKNOWLEDGED"))
                .containsEntry(
                        "read back, waiting for the sign-off", List.of("RETUNE_CLEARED", "CUSTOMER_ACKNOWLEDGED"))
                .containsEntry(
                        "signed off, waiting for the customer's acknowledgement", List.of("CUSTOMER_ACKNOWLEDGED"))
                .containsEntry(
                        "everything done, and the ECU keeps a trouble code of the mixture",
                        List.of("NO_RELATED_TROUBLE_CODES"))
                // it would need another acknowledgement before it left again
                .containsEntry("handed over CLEAR", List.of("CUSTOMER_ACKNOWLEDGED"));
    }

    @Test
    void aSecondStartAddsNothing() {
        Map<String, Long> before = counts();
        try (FreshBayhold again = FreshBayhold.withTheDemoShop(store)) {
            assertThat(counts()).isEqualTo(before);
            assertThat(again.shop().as(Role.WRITER).list("/vehicles")).hasSameSizeAs(SITUATIONS.keySet());
        }
    }

    @Test
    void nobodysTokenIsLeftWorking() {
        for (Role role : Role.values()) {
            List<JsonNode> left = elements(bayhold.shop()
                            .as(role)
                            .get("/tokens")
                            .is(200)
                            .json()
                            .path("items"))
                    .stream()
                    .filter(token -> textOf(token.path("label")).contains("demo shop"))
                    .filter(token -> textOf(token.path("revokedAt")).isEmpty())
                    .toList();
            assertThat(left).as("tokens of %s", role).isEmpty();
        }
    }

    private Map<String, Long> counts() {
        JdbcClient jdbc = JdbcClient.create(bayhold.bean(DataSource.class));
        Map<String, Long> counts = new LinkedHashMap<>();
        for (String table : List.of("vehicle", "part_spec", "calibration", "fact", "retune_item", "personal_data")) {
            counts.put(
                    table,
                    jdbc.sql("select count(*) from " + table).query(Long.class).single());
        }
        return counts;
    }

    private Map<String, String> situations(Shop shop) {
        Map<String, String> situations = new LinkedHashMap<>();
        byWhatTheyShow(shop).forEach((shows, id) -> situations.put(shows, situation(shop, id)));
        return situations;
    }

    private static String situation(Shop shop, String id) {
        String path = "/vehicles/" + id;
        String decision = shop.as(Role.WRITER).get(path + "/gate").is(200).field("decision");
        List<String> causes = shop.as(Role.WRITER).list(path + "/retune-items").stream()
                .filter(item -> textOf(item.path("status")).equals("OPEN"))
                .flatMap(item -> elements(item.path("causes")).stream())
                .map(cause -> textOf(cause.path("code")))
                .distinct()
                .sorted()
                .toList();
        String left = shop.as(Role.WRITER).list(path + "/handoffs").stream()
                .map(handoff -> textOf(handoff.path("basis")))
                .reduce("in", (before, later) -> later);
        return decision + " " + causes + " " + left;
    }

    private List<String> failing(String id) {
        JsonNode gate = bayhold.shop()
                .as(Role.WRITER)
                .get("/vehicles/" + id + "/gate")
                .is(200)
                .json();
        return elements(gate.path("checks")).stream()
                .filter(check -> textOf(check.path("outcome")).equals("FAIL"))
                .map(check -> textOf(check.path("code")))
                .toList();
    }

    /** The ids of the cars, by what the data says of the car with that VIN or frame number. */
    private static Map<String, String> byWhatTheyShow(Shop shop) {
        Map<String, String> shows =
                DemoData.read().cars().stream().collect(Collectors.toMap(DemoFilling::name, DemoData.DemoCar::shows));
        Map<String, String> ids = new LinkedHashMap<>();
        for (JsonNode car : shop.as(Role.WRITER).list("/vehicles")) {
            String vin = textOf(car.path("vin"));
            String name = vin.isEmpty() ? textOf(car.path("frameNumber")) : vin;
            ids.put(shows.getOrDefault(name, "a stranger: " + name), textOf(car.path("id")));
        }
        return ids;
    }

    /** Starts {@code many} servers at once on the one database, and leaves one of them running. */
    static FreshBayhold atOnce(FreshBayhold.Store store, int many) throws Exception {
        ExecutorService starts = Executors.newFixedThreadPool(many);
        try {
            List<Future<FreshBayhold>> servers = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                servers.add(starts.submit(() -> FreshBayhold.withTheDemoShop(store)));
            }
            for (Future<FreshBayhold> server : servers.subList(1, many)) {
                server.get().close();
            }
            return servers.get(0).get();
        } finally {
            starts.shutdown();
        }
    }
}
