package org.bayhold.identity;

import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;
import org.bayhold.page.Form;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** The users of the shop, for its administrators. */
@Controller
class UsersPage {
    private static final String ONE = "identity/user";

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

    @Needs(Act.MANAGE_USERS)
    @GetMapping("/users/{id}")
    ModelAndView one(@PathVariable UUID id, Form form) {
        return ofPerson(form.show(ONE), id);
    }

    @Needs(Act.MANAGE_USERS)
    @PostMapping("/users/{id}")
    ModelAndView change(Call call, @PathVariable UUID id, Form form) {
        return ofPerson(
                form.submit(ONE, () -> {
                    Set<Role> roles = EnumSet.noneOf(Role.class);
                    roles.addAll(form.choices("roles", Role.class));
                    People.Person changed = people.change(call, id, roles, form.checked("enabled"));
                    return form.done("/users", "users.changed", changed.username());
                }),
                id);
    }

    @Needs(Act.MANAGE_USERS)
    @PostMapping("/users/{id}/password")
    ModelAndView password(Call call, @PathVariable UUID id, Form form) {
        return ofPerson(
                form.submit(ONE, () -> {
                    People.Person changed = people.setPassword(call, id, form.secret("password"));
                    return form.done("/users", "users.new-password", changed.username());
                }),
                id);
    }

    private ModelAndView ofPerson(ModelAndView page, UUID id) {
        return Form.leadsOn(page)
                ? page
                : page.addObject("person", people.get(id)).addObject("roles", Role.values());
    }

    private ModelAndView withLists(ModelAndView page) {
        if (!Form.leadsOn(page)) {
            page.addObject("people", people.all());
            page.addObject("roles", Role.values());
        }
        return page;
    }
}
