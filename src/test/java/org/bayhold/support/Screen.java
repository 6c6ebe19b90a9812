package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.bayhold.support.Browser.Look;

/** One window of the browser. What its console says, and what the content security policy stops, fails the test at the end. */
public final class Screen implements AutoCloseable {
    private static final Path PICTURES = Path.of("docs", "pictures");
    private static final List<String> RULES =
            List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

    private final BrowserContext context;
    private final URI server;
    private final Page page;
    private final List<String> complaints = new ArrayList<>();

    Screen(BrowserContext context, URI server) {
        this.context = context;
        this.server = server;
        context.setDefaultTimeout(10_000);
        context.addInitScript(
                "document.addEventListener('securitypolicyviolation', e =>"
                        + " console.error('stopped by the policy: ' + e.violatedDirective + ' ' + e.sourceFile + ':' + e.lineNumber))");
        this.page = context.newPage();
        page.onConsoleMessage(message -> {
            boolean refusedForm =
                    message.text().startsWith("Failed to load resource: the server responded with a status of 4");
            if (List.of("error", "warning").contains(message.type()) && !refusedForm) {
                complaints.add(message.type() + ": " + message.text());
            }
        });
        page.onPageError(error -> complaints.add("page error: " + error));
    }

    public Page page() {
        return page;
    }

    public Screen to(String path) {
        page.navigate(server.resolve(path).toString());
        return this;
    }

    /** The same page in a window of that size and those colours. */
    public Screen in(Look look) {
        page.setViewportSize(look.width(), look.height());
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(look.scheme()));
        return this;
    }

    public String path() {
        return URI.create(page.url()).getPath();
    }

    public Screen press(String button) {
        named(AriaRole.BUTTON, button).first().click();
        return this;
    }

    public Screen follow(String link) {
        named(AriaRole.LINK, link).first().click();
        return this;
    }

    public Screen choose(String radioOrCheckBox) {
        page.getByLabel(radioOrCheckBox, new Page.GetByLabelOptions().setExact(true))
                .first()
                .check();
        return this;
    }

    public Screen unfold(String summary) {
        page.locator("summary")
                .filter(new Locator.FilterOptions().setHasText(summary))
                .first()
                .click();
        return this;
    }

    /** Types into the field whose label begins so. */
    public Screen type(String label, String text) {
        field(label).fill(text);
        return this;
    }

    /** Types with the keyboard alone where the caret stands, as soon as it stands in the field whose label begins so. */
    public Screen typeWhereTheCaretIs(String label, String text) {
        page.waitForCondition(() -> (Boolean) field(label).evaluate("field => field === document.activeElement"));
        page.keyboard().type(text);
        return this;
    }

    public Locator field(String label) {
        return page.getByLabel(Pattern.compile("^" + label.replaceAll("[^\\p{L}\\p{N} ]", "\\\\$0")))
                .first();
    }

    public Screen shows(String text) {
        page.waitForLoadState(); // a page that is still coming shows its beginning
        assertThat(page.locator("main").innerText()).as("at %s", page.url()).contains(text);
        return this;
    }

    public Screen isAt(String path) {
        assertThat(path()).as(() -> page.locator("main").innerText()).isEqualTo(path);
        return this;
    }

    public String gate() {
        page.waitForLoadState();
        return page.locator(".state strong").first().innerText();
    }

    /** No violation that axe-core finds, and nothing to scroll to sideways. */
    public Screen isAccessible() {
        assertThat(axe().withTags(RULES).analyze().getViolations())
                .as("axe at %s", page.url())
                .extracting(rule -> rule.getId() + " "
                        + rule.getNodes().stream()
                                .map(node -> node.getTarget() + " " + node.getHtml() + " " + node.getFailureSummary())
                                .toList())
                .isEmpty();
        return fits();
    }

    /** Another look brings other colours: every text stands out from what is behind it. */
    public Screen isLegible() {
        assertThat(axe().withRules(List.of("color-contrast")).analyze().getViolations())
                .as("contrast at %s", page.url())
                .extracting(rule -> rule.getNodes().stream()
                        .map(node -> node.getTarget() + " " + node.getHtml() + " " + node.getFailureSummary())
                        .toList())
                .isEmpty();
        return fits();
    }

    /** What is in order need not be described: of a long page that is most of the work. No page has frames. */
    private AxeBuilder axe() {
        AxeRunOptions options = new AxeRunOptions();
        options.setResultTypes(List.of("violations"));
        return new AxeBuilder(page).options(options).setLegacyMode(true);
    }

    public Screen fits() {
        page.waitForLoadState(); // a page that is still coming has no width
        Object wider = page.evaluate("() => { const w = document.documentElement.clientWidth;"
                + " return document.documentElement.scrollWidth <= w ? [] :"
                + " [...document.querySelectorAll('main *')].filter(e => e.getBoundingClientRect().right > w + 1)"
                + ".slice(0, 5).map(e => e.outerHTML.slice(0, 120)) }");
        assertThat(wider).as("wider than the window at %s", page.url()).isEqualTo(List.of());
        return this;
    }

    /** Kept in the repository only where the build is asked for it: {@code -Dbayhold.pictures=true}. */
    public Screen picture(String name) {
        if (Boolean.getBoolean("bayhold.pictures")) {
            page.screenshot(new Page.ScreenshotOptions().setPath(PICTURES.resolve(name + ".png")));
        }
        return this;
    }

    String session() {
        return context.storageState();
    }

    private Locator named(AriaRole role, String name) {
        return page.getByRole(role, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    @Override
    public void close() {
        context.close();
        assertThat(complaints).as("what the browser complained of").isEmpty();
    }
}
