package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URI;
import java.net.http.HttpHeaders;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A check of every answer is worth as much as it notices. */
class DescribedTest {
    private static final String PROBLEM =
            "{'type':'urn:bayhold:problem:forbidden','title':'Forbidden','status':403,'detail':'No.','requestId':'%s'}"
                    .formatted("01a21287-0fb5-7ad5-b900-73955c7f7e0c");

    @Test
    void anAnswerAsDescribedPasses() {
        assertThatCode(() -> check(200, "application/json", "{'items':[],'next':null}"))
                .doesNotThrowAnyException();
        assertThatCode(() -> check(403, "application/problem+json", PROBLEM)).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "200 | application/json         | {'next':null}",
                "200 | application/json         | {'items':null}",
                "200 | application/json         | {'items':[],'total':3}",
                "200 | application/json         | {'items':[],'next':7}",
                "200 | application/json         | {'items':[{'id':'01a21287-0fb5-7ad5-b900-73955c7f7e0c'}]}",
                "200 | text/html                | hello",
                "418 | application/problem+json | {}",
                "403 | application/problem+json | {}"
            })
    void anyOtherIsReported(int status, String type, String body) {
        assertThatThrownBy(() -> check(status, type, body)).isInstanceOf(AssertionError.class);
    }

    @Test
    void aHoldWithoutItsDecisionIsReported() {
        URI handoffs = URI.create("http://localhost/api/v1/vehicles/1/handoffs");
        Answer answer = answer(409, "application/problem+json", PROBLEM.replace("403", "409"));

        assertThatThrownBy(() -> Described.check("POST", handoffs, answer)).hasMessageContaining("gate");
    }

    @Test
    void aDescribedHeaderThatIsMissingIsReported() {
        URI car = URI.create("http://localhost/api/v1/vehicles/1");

        assertThatThrownBy(() -> Described.check("GET", car, answer(200, "application/json", "{}")))
                .hasMessageContaining("ETag");
    }

    @Test
    void whatIsNoRouteIsNotAskedFor() {
        URI nowhere = URI.create("http://localhost/api/v1/nowhere");

        assertThatCode(() -> Described.check("GET", nowhere, answer(404, "text/html", "")))
                .doesNotThrowAnyException();
    }

    private static void check(int status, String type, String body) {
        Answer ignored =
                Described.check("GET", URI.create("http://localhost/api/v1/vehicles"), answer(status, type, body));
    }

    private static Answer answer(int status, String type, String body) {
        HttpHeaders headers = HttpHeaders.of(Map.of("Content-Type", List.of(type)), (name, value) -> true);
        return new Answer("GET /vehicles", status, headers, body.replace('\'', '"'));
    }
}
