package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import tools.jackson.databind.JsonNode;

/** What the audit says, as an auditor reads it. */
public final class Audit {
    private final Shop shop;

    public Audit(Shop shop) {
        this.shop = shop;
    }

    /** Every row that {@code query} asks for. */
    public List<Row> rows(String query) {
        return Answer.elements(ask(query).is(200).json()).stream().map(Row::new).toList();
    }

    public Answer ask(String query) {
        return shop.as(Role.AUDITOR).get("/audit/handoffs" + query);
    }

    /** The rows of one car. */
    public List<Row> of(Car car) {
        return rows("").stream().filter(row -> row.isOf(car)).toList();
    }

    /** The row of a handover. */
    public Row of(Answer handoff) {
        List<Row> rows = rows("").stream()
                .filter(row -> row.text("handoffId").equals(handoff.id()))
                .toList();
        assertThat(rows).as("rows of %s", handoff).hasSize(1);
        return rows.get(0);
    }

    /** One row. */
    public record Row(JsonNode json) {
        public String text(String field) {
            return Answer.textOf(json.path(field));
        }

        public boolean isOf(Car car) {
            return Answer.textOf(json.path("vehicle").path("id")).equals(car.id());
        }

        public Row says(String decidedThen, String knownThen, String knownNow) {
            assertThat(List.of(text("decidedThen"), text("knownThen"), text("knownNow")))
                    .as(toString())
                    .containsExactly(decidedThen, knownThen, knownNow);
            return this;
        }

        public Row finds(String... findings) {
            assertThat(list("findings")).as(toString()).containsExactlyInAnyOrder(findings);
            return this;
        }

        public List<String> list(String field) {
            return Answer.elements(json.path(field)).stream()
                    .map(Answer::textOf)
                    .toList();
        }

        public Row isNeverUnmatched() {
            assertThat(text("unmatchedSince")).as(toString()).isEmpty();
            assertThat(text("matchedAgainAt")).as(toString()).isEmpty();
            assertThat(text("stillUnmatchedSince")).as(toString()).isEmpty();
            assertThat(days()).as(toString()).isZero();
            return this;
        }

        public Row isUnmatchedSince(String moment) {
            assertThat(Instant.parse(text("unmatchedSince"))).as(toString()).isEqualTo(Instant.parse(moment));
            return this;
        }

        public Row isStillUnmatched() {
            assertThat(text("stillUnmatchedSince")).as(toString()).isNotEmpty();
            assertThat(text("returnedAt")).as(toString()).isEmpty();
            return this;
        }

        public Row isUnmatchedNoMore() {
            assertThat(text("stillUnmatchedSince")).as(toString()).isEmpty();
            return this;
        }

        public Row lasted(Duration expected) {
            assertThat(days())
                    .as(toString())
                    .isBetween(expected.toMinutes() / 1440.0 - 0.011, expected.toMinutes() / 1440.0 + 0.011);
            return this;
        }

        private double days() {
            assertThat(json.path("daysUnmatched").isNumber()).as(toString()).isTrue();
            return json.path("daysUnmatched").asDouble();
        }
    }
}
