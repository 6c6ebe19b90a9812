package org.bayhold.identity;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.bayhold.page.Form;
import org.bayhold.refusal.Code;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** Signing in, and going on with a form whose session had ended. */
@Controller
class SignInPage {
    /** Request attribute: the key of the sentence that says why somebody was not signed in. */
    static final String REFUSED = "org.bayhold.sign-in.refused";

    private static final String KEPT = "_kept.";
    /** Not part of what was typed, or not to be carried about. */
    private static final Set<String> NOT_KEPT = Set.of("_csrf", "_to");

    /** A field of the form that is carried along. */
    record Kept(String name, String value) {
        public boolean isTyped() {
            return !name.startsWith("_") && !value.isBlank();
        }
    }

    @ForEverybody
    @GetMapping("/sign-in")
    ModelAndView form(HttpServletRequest request) {
        String said = request.getParameter("out") != null
                ? "sign-in.out"
                : request.getParameter("ready") != null ? "sign-in.ready" : null;
        return page(null, said, "", null, List.of());
    }

    /** A form came without a session, or the sign-in failed; both are asked for name and password, and keep what was sent. */
    @ForEverybody
    @PostMapping("/sign-in/again")
    ModelAndView again(HttpServletRequest request, HttpServletResponse response) {
        String refused = (String) request.getAttribute(REFUSED);
        response.setStatus(Code.UNAUTHENTICATED.status());
        String asked = askedFor(request);
        boolean signingIn = asked.equals(PageSecurity.SIGN_IN);
        String to = signingIn ? own(request.getParameter(EndedSession.TO)) : own(asked);
        String said = refused != null ? null : signingIn ? "sign-in.too-late" : "sign-in.ended";
        String name = signingIn ? String.valueOf(request.getParameter("username")) : "";
        return page(refused, said, name, to, to == null ? List.of() : kept(request, signingIn));
    }

    /** Signed in again: what was typed is shown, and sent when the person says so. */
    @ForEverybody
    @PostMapping("/sign-in/resumed")
    ModelAndView resumed(HttpServletRequest request) {
        String to = own(request.getParameter(EndedSession.TO));
        return to == null
                ? new ModelAndView("redirect:/")
                : new ModelAndView("identity/resumed", Map.of("to", to, "kept", kept(request, true)));
    }

    private static ModelAndView page(
            @Nullable String refused, @Nullable String said, String name, @Nullable String to, List<Kept> kept) {
        ModelAndView page = new ModelAndView("identity/sign-in");
        page.addObject("refused", refused);
        page.addObject("note", said);
        page.addObject("name", name);
        page.addObject("to", to);
        page.addObject("kept", kept);
        return page;
    }

    private static String askedFor(HttpServletRequest request) {
        return String.valueOf(request.getAttribute(RequestDispatcher.FORWARD_REQUEST_URI));
    }

    /** An address of this site, or null. */
    static @Nullable String own(@Nullable String address) {
        boolean own = address != null
                && address.matches("/[A-Za-z0-9/_.-]*")
                && !address.startsWith("//")
                && !address.toLowerCase(Locale.ROOT).startsWith("/sign-");
        return own ? address : null;
    }

    private static List<Kept> kept(HttpServletRequest request, boolean carried) {
        List<Kept> kept = new ArrayList<>();
        request.getParameterMap().forEach((name, values) -> {
            boolean ours = carried ? name.startsWith(KEPT) : !NOT_KEPT.contains(name) && !Form.isSecret(name);
            String bare = carried && ours ? name.substring(KEPT.length()) : name;
            for (String value : ours ? values : new String[0]) {
                kept.add(new Kept(bare, value));
            }
        });
        return kept;
    }
}
