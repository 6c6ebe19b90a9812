package org.bayhold.identity;

import java.util.EnumSet;
import java.util.Set;
import org.bayhold.page.Form;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** The users of the shop, for its administrators. */
@Controller
class UsersPage {
    private final People people;

    UsersPage(People people) {
        this.people = people;
    }

    @Needs(Act.MANAGE_USERS)
    @GetMapping("/users")
    ModelAndView list(Form form) {
        return withLists(form.show("identity/users"));
    }

    @Needs(Act.MANAGE_USERS)
    @PostMapping("/users")
    ModelAndView add(Call call, Form form) {
        return withLists(form.submit("identity/users", () -> {
            Set<Role> roles = EnumSet.noneOf(Role.class);
            roles.addAll(form.choices("roles", Role.class));
            People.Person added = people.add(call, form.required("username"), roles, form.secret("password"));
            return form.done("/users", "users.added", added.username());
        }));
    }

    private ModelAndView withLists(ModelAndView page) {
        if (!String.valueOf(page.getViewName()).startsWith("redirect:")) {
            page.addObject("people", people.all());
            page.addObject("roles", Role.values());
        }
        return page;
    }
}
