package org.bayhold.identity;

import org.bayhold.page.Form;
import org.bayhold.page.Units;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** How the pages look to oneself. */
@Controller
class SettingsPage {
    private static final String VIEW = "identity/settings";

    private final People people;

    SettingsPage(People people) {
        this.people = people;
    }

    @ForEverybody
    @GetMapping("/settings")
    ModelAndView form(Caller caller, Form form) {
        return choices(form.with("units", caller.units()).show(VIEW));
    }

    @ForEverybody
    @PostMapping("/settings")
    ModelAndView change(Call call, Form form) {
        return choices(form.submit(VIEW, () -> {
            String typed = form.required("units");
            Units units = typed.isEmpty() ? null : form.choice("units", Units.class);
            form.check();
            people.chooseUnits(call, units == null ? Units.METRIC : units);
            return form.done("/settings", "settings.changed");
        }));
    }

    private static ModelAndView choices(ModelAndView page) {
        return Form.leadsOn(page) ? page : page.addObject("units", Units.values());
    }
}
