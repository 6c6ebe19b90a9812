package org.bayhold.support;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/**
 * One Chromium for all browser tests. Where none is installed they are skipped, and say so; on a build server, which sets
 * CI, they fail instead. Another one than Debian's is named by {@code -Dbayhold.chromium=PATH}.
 */
public final class Browser implements ExecutionCondition, ParameterResolver {
    private static final Path CHROMIUM = Path.of(System.getProperty("bayhold.chromium", "/usr/bin/chromium"));
    private static final ExtensionContext.Namespace HERE = ExtensionContext.Namespace.create(Browser.class);

    /** How the window looks: its width and height in CSS pixels, and the colour scheme. */
    public record Look(int width, int height, ColorScheme scheme) {
        public static final Look TABLET = new Look(820, 1180, ColorScheme.LIGHT);
        public static final Look PHONE = new Look(375, 812, ColorScheme.LIGHT);
        public static final Look DESK = new Look(1280, 900, ColorScheme.LIGHT);

        public Look dark() {
            return new Look(width, height, ColorScheme.DARK);
        }
    }

    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        if (Files.isExecutable(CHROMIUM) || "1".equals(System.getenv("CI")) || "true".equals(System.getenv("CI"))) {
            return ConditionEvaluationResult.enabled("in " + CHROMIUM);
        }
        String skipped = "SKIPPED: no Chromium at " + CHROMIUM + ", so no page was tried in a browser";
        System.err.println(skipped);
        return ConditionEvaluationResult.disabled(skipped);
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Windows.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        return context.getRoot().getStore(HERE).computeIfAbsent(Windows.class, key -> new Windows(), Windows.class);
    }

    /** Opens windows; closed when all tests have run. */
    public static final class Windows implements AutoCloseable {
        private final Playwright playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        private final com.microsoft.playwright.Browser chromium = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(CHROMIUM)
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-quic",
                                "--no-first-run",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync")));
        private final Map<String, String> sessions = new HashMap<>();

        /** A window of nobody. */
        public Screen open(Shop shop, Look look, boolean scripts) {
            return new Screen(context(look, scripts, null), shop.address());
        }

        /** A window of whoever has the role; signed in once by the form, and after that by the same session. */
        public Screen open(Shop shop, Role role, Look look, boolean scripts) {
            String session = sessions.computeIfAbsent(shop.address() + " " + role, key -> signIn(shop, role));
            return new Screen(context(look, scripts, session), shop.address());
        }

        public Screen open(Shop shop, Role role) {
            return open(shop, role, Look.TABLET, true);
        }

        private String signIn(Shop shop, Role role) {
            try (Screen screen = open(shop, Look.TABLET, true)) {
                shop.signIn(screen, role);
                return screen.session();
            }
        }

        private BrowserContext context(Look look, boolean scripts, String session) {
            com.microsoft.playwright.Browser.NewContextOptions options =
                    new com.microsoft.playwright.Browser.NewContextOptions()
                            .setViewportSize(look.width(), look.height())
                            .setColorScheme(look.scheme())
                            .setReducedMotion(ReducedMotion.REDUCE) // no colour is on its way when it is looked at
                            .setJavaScriptEnabled(scripts)
                            .setLocale("en-GB");
            return chromium.newContext(session == null ? options : options.setStorageState(session));
        }

        @Override
        public void close() {
            chromium.close();
            playwright.close();
        }
    }
}
