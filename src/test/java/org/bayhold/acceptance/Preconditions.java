package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.aCustomer;

import java.util.stream.Stream;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A stale page changes nothing: If-Match. */
public abstract class Preconditions implements OnADatabase {
    private Api writer;
    private Car car;

    @BeforeEach
    void aCarWithAnOpenItem() {
        writer = shop().as(Role.WRITER);
        car = shop().registers(aCar());
        car.fits(shop().aPartFor("AIR_INTAKE"));
    }

    @Test
    void aCarIsChangedByWhoHasSeenItAsItIs() {
        String seen = writer.get(car.path("")).is(200).etag();
        Body change = Body.of("plate", "B-NEW-1").with("engine", "NW25T").with("customer", aCustomer());

        writer.withIfMatch(seen).patch(car.path(""), change).is(200);

        Answer changed = writer.get(car.path("")).is(200);
        assertThat(changed.field("plate")).isEqualTo("B-NEW-1");
        assertThat(changed.field("engine")).isEqualTo("NW25T");
        assertThat(changed.field("vin")).isEqualTo(car.vin());
        assertThat(changed.etag()).isNotEqualTo(seen);
    }

    @Test
    void aCarIsNotChangedBlindly() {
        writer.patch(car.path(""), Body.of("plate", "B-NEW-2")).isProblem(428, "precondition-required");
        plateIsStillTheOld();
    }

    @Test
    void aCarIsNotChangedFromAStalePage() {
        String seen = writer.get(car.path("")).is(200).etag();
        writer.withIfMatch(seen).patch(car.path(""), Body.of("engine", "NW25T")).is(200);

        writer.withIfMatch(seen)
                .patch(car.path(""), Body.of("plate", "B-NEW-3"))
                .isProblem(412, "stale");
        writer.withIfMatch("\"no such version\"")
                .patch(car.path(""), Body.of("plate", "B-NEW-3"))
                .isProblem(412, "stale");

        plateIsStillTheOld();
    }

    @Test
    void whatIdentifiesACarIsNotChanged() {
        String seen = writer.get(car.path("")).is(200).etag();
        for (Body change : Stream.of("vin", "baseline", "ecuHardware", "factoryCalid")
                .map(field -> Body.of(field, "ANOTHER"))
                .toList()) {
            writer.withIfMatch(seen).patch(car.path(""), change).isProblem(400, "invalid");
        }
        assertThat(writer.get(car.path("")).etag()).isEqualTo(seen);
    }

    @Test
    void anItemIsPlannedByWhoHasSeenItAsItIs() {
        String path = "/retune-items/" + car.openItem().id();
        String seen = writer.get(path).is(200).etag();
        Body plan = Body.of("assignee", "Tariq Boone")
                .with("promisedAt", "2031-05-04T09:00:00Z")
                .with("note", "waits for a gasket");

        writer.withIfMatch(seen).patch(path, plan).is(200);

        Answer planned = writer.get(path).is(200);
        assertThat(planned.field("assignee")).isEqualTo("Tariq Boone");
        assertThat(planned.field("promisedAt")).isEqualTo("2031-05-04T09:00:00Z");
        assertThat(planned.field("status")).isEqualTo("OPEN");
        assertThat(planned.etag()).isNotEqualTo(seen);
        car.gate().holdsFor("RETUNE_CLEARED");
    }

    @Test
    void anItemIsNotPlannedBlindlyOrFromAStalePage() {
        String path = "/retune-items/" + car.openItem().id();
        String seen = writer.get(path).is(200).etag();
        writer.withIfMatch(seen).patch(path, Body.of("note", "first")).is(200);
        int before = car.history().size();

        writer.patch(path, Body.of("assignee", "Tariq Boone")).isProblem(428, "precondition-required");
        writer.withIfMatch(seen).patch(path, Body.of("assignee", "Tariq Boone")).isProblem(412, "stale");

        assertThat(car.history()).hasSize(before);
        assertThat(writer.get(path).field("assignee")).isEmpty();
    }

    @Test
    void aCauseThatJoinsMakesThePageStale() {
        String path = "/retune-items/" + car.openItem().id();
        String seen = writer.get(path).is(200).etag();

        car.fits(shop().aPartFor("DOWNPIPE"));

        writer.withIfMatch(seen).patch(path, Body.of("note", "late")).isProblem(412, "stale");
    }

    private void plateIsStillTheOld() {
        assertThat(writer.get(car.path("")).is(200).field("plate")).startsWith("B-PN-");
    }
}
