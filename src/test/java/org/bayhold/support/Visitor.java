package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.springframework.web.util.HtmlUtils;

/** Somebody at the pages, with the cookies of one browser and no script. */
public final class Visitor {
    private static final Pattern HIDDEN =
            Pattern.compile("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"");

    private final URI server;
    private final CookieManager cookies = new CookieManager();
    private final HttpClient http = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .cookieHandler(cookies)
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build();
    private String page = "";

    public Visitor(URI server) {
        this.server = server;
    }

    /** A page as it arrived, after any redirects. */
    public record Shown(int status, String path, String html, Map<String, List<String>> headers) {
        public Shown is(int expected) {
            assertThat(status).as(path + "\n" + html).isEqualTo(expected);
            return this;
        }

        /** The words of it. */
        public String text() {
            return HtmlUtils.htmlUnescape(html.replaceAll("<[^>]+>", " ")).replaceAll("\\s+", " ");
        }
    }

    public Shown opens(String path) {
        return show(HttpRequest.newBuilder(server.resolve(path)).GET());
    }

    /** Sends the form of the page in sight: its hidden fields, and what is typed. */
    public Shown sends(String path, Map<String, String> typed) {
        Map<String, String> all = hidden();
        all.putAll(typed);
        return sendsOnly(path, all, "same-origin");
    }

    /** Sends these fields and no others. */
    public Shown sendsOnly(String path, Map<String, String> fields, String site) {
        String body = fields.entrySet().stream()
                .map(field -> Shop.encoded(field.getKey()) + "=" + Shop.encoded(field.getValue()))
                .collect(Collectors.joining("&"));
        return show(HttpRequest.newBuilder(server.resolve(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Accept", "text/html")
                .header("Sec-Fetch-Site", site)
                .POST(BodyPublishers.ofString(body)));
    }

    public Shown signsIn(String user, String password) {
        Shown ignored = opens("/sign-in");
        return sends("/sign-in", Map.of("username", user, "password", password));
    }

    /** Another browser of the same person, in the same session. */
    Visitor again() {
        Visitor again = new Visitor(server);
        cookies.getCookieStore()
                .get(server)
                .forEach(cookie -> again.cookies.getCookieStore().add(server, cookie));
        return again;
    }

    /** The session ends: its cookie is known no more. */
    public void losesTheSession() {
        cookies.getCookieStore().removeAll();
    }

    public String address(String path) {
        return server.resolve(path).toString();
    }

    /** The hidden fields of the page in sight. */
    public Map<String, String> hidden() {
        Map<String, String> hidden = new LinkedHashMap<>();
        String main = page.substring(Math.max(0, page.indexOf("<main")));
        Matcher field = HIDDEN.matcher(main);
        while (field.find()) {
            hidden.put(field.group(1), HtmlUtils.htmlUnescape(field.group(2)));
        }
        return hidden;
    }

    private Shown show(HttpRequest.Builder request) {
        try {
            HttpResponse<String> response = http.send(
                    request.timeout(Duration.ofSeconds(60)).build(), BodyHandlers.ofString(StandardCharsets.UTF_8));
            page = response.body();
            return new Shown(
                    response.statusCode(),
                    response.uri().getPath(),
                    page,
                    response.headers().map());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
