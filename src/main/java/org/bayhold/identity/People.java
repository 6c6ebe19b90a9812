package org.bayhold.identity;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.bayhold.journal.Chains;
import org.bayhold.journal.Ids;
import org.bayhold.journal.Standing;
import org.bayhold.journal.WriteRequest;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.page.Units;
import org.bayhold.refusal.Refusal;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The users of the shop. */
@Component
public class People {
    /** In whose name the first user is made. */
    private static final UUID NOBODY = new UUID(0, 0);

    private final Users users;
    private final WriteTemplate writes;
    private final Standing standing;
    private final PasswordEncoder passwords;
    private final PasswordRule rule;

    People(Users users, WriteTemplate writes, Standing standing, PasswordEncoder passwords, PasswordRule rule) {
        this.rule = rule;
        this.users = users;
        this.writes = writes;
        this.standing = standing;
        this.passwords = passwords;
    }

    /** Who a person is, as the journal keeps it. */
    record UserAdded(UUID id, String username, Set<Role> roles) {}

    /**
     * Makes sure that there is a user of each name with its role and this password. Safe when two servers do it at once:
     * the second one finds what the first has made. A broken record is left as it is.
     */
    public void ensure(Map<String, Role> roles, String password) {
        if (standing.broken().isPresent()) {
            return;
        }
        String hash = Objects.requireNonNull(passwords.encode(password));
        roles.forEach((username, role) -> {
            if (users.named(username).isEmpty()) {
                add(username, role, hash);
            }
        });
        users.passwords(roles.keySet(), hash);
    }

    /** A user as listed. */
    record Person(UUID id, String username, Set<Role> roles, boolean enabled) {
        static Person of(UserRow row) {
            return new Person(row.getId(), row.username(), Set.copyOf(row.roles()), row.enabled());
        }
    }

    @Transactional(readOnly = true)
    public List<Person> all() {
        return users.withRoles().stream().map(Person::of).toList();
    }

    boolean isEmpty() {
        return users.count() == 0;
    }

    /**
     * A new user.
     *
     * @throws Refusal INVALID for a name or password against the rules; CONFLICT where the name is taken
     */
    Person add(Call call, String username, Set<Role> roles, String password) {
        call.caller().must(Act.MANAGE_USERS);
        return add(call.request(), username, roles, password, false);
    }

    /**
     * The first user, an administrator.
     *
     * @throws Refusal NOT_FOUND where there is somebody already
     */
    Person addFirst(String username, String password) {
        return add(WriteRequest.internal(NOBODY), username, Set.of(Role.ADMINISTRATOR), password, true);
    }

    private Person add(WriteRequest request, String typed, Set<Role> roles, String password, boolean first) {
        String username = typed.strip().toLowerCase(Locale.ROOT);
        if (!username.matches("[\\p{L}\\p{N}][\\p{L}\\p{N}._@-]{1,63}")) {
            throw Refusal.invalid("username", "user.name");
        }
        if (roles.isEmpty()) {
            throw Refusal.invalid("roles", "user.roles");
        }
        rule.check(password, username);
        String hash = Objects.requireNonNull(passwords.encode(password));
        UUID id = Ids.next();
        return writes.write(request, Chains.IDENTITY, Person.class, chain -> {
                    if (first && !isEmpty()) {
                        throw Refusal.notFound("problem.not-found");
                    }
                    if (users.named(username).isPresent()) {
                        throw Refusal.conflict("username", "user.exists", username);
                    }
                    UserRow row = users.save(new UserRow(id, username, hash, roles, chain.recordedAt()));
                    chain.append("USER_ADDED", id, chain.recordedAt(), new UserAdded(id, username, roles));
                    return Person.of(row);
                })
                .value();
    }

    /** What changed about a user. */
    record UserChanged(UUID id, Set<Role> roles, boolean enabled) {}

    /** That a password was set; which one is nobody's business. */
    record PasswordSet(UUID id) {}

    /**
     * Other roles, or no sign-in any more; in force at the person's next request.
     *
     * @throws Refusal NOT_FOUND; INVALID without a role; CONFLICT for an administrator who would lock out himself
     */
    Person change(Call call, UUID id, Set<Role> roles, boolean enabled) {
        call.caller().must(Act.MANAGE_USERS);
        if (roles.isEmpty()) {
            throw Refusal.invalid("roles", "user.roles");
        }
        if (id.equals(call.caller().userId()) && !(enabled && roles.contains(Role.ADMINISTRATOR))) {
            throw Refusal.conflict("roles", "user.lock-out");
        }
        return writes.write(call.request(), Chains.IDENTITY, Person.class, chain -> {
                    UserRow row = row(id);
                    row.change(roles, enabled);
                    chain.append("USER_CHANGED", Ids.next(), chain.recordedAt(), new UserChanged(id, roles, enabled));
                    return Person.of(row);
                })
                .value();
    }

    /**
     * A new password, set by an administrator or by the person; every session that began before ends.
     *
     * @throws Refusal NOT_FOUND; FORBIDDEN; INVALID for a password against the rules
     */
    Person setPassword(Call call, UUID id, String password) {
        if (!id.equals(call.caller().userId())) {
            call.caller().must(Act.MANAGE_USERS);
        }
        rule.check(password, row(id).username());
        String hash = Objects.requireNonNull(passwords.encode(password));
        return writes.write(call.request(), Chains.IDENTITY, Person.class, chain -> {
                    UserRow row = row(id);
                    row.newPassword(hash, chain.recordedAt());
                    chain.append("PASSWORD_SET", Ids.next(), chain.recordedAt(), new PasswordSet(id));
                    return Person.of(row);
                })
                .value();
    }

    /** In which units somebody wants to read. */
    record UnitsChosen(UUID id, Units units) {}

    /** The units in which pages show this person figures from now on. */
    void chooseUnits(Call call, Units units) {
        UUID id = call.caller().userId();
        UnitsChosen ignored = writes.write(call.request(), Chains.IDENTITY, UnitsChosen.class, chain -> {
                    UnitsChosen chosen = new UnitsChosen(id, units);
                    row(id).chooseUnits(units);
                    chain.append("UNITS_CHOSEN", Ids.next(), chain.recordedAt(), chosen);
                    return chosen;
                })
                .value();
    }

    @Transactional(readOnly = true)
    public Person get(UUID id) {
        return Person.of(row(id));
    }

    private UserRow row(UUID id) {
        return users.withRoles(id).orElseThrow(() -> Refusal.notFound("user.not-found"));
    }

    private void add(String username, Role role, String hash) {
        UUID id = Ids.next();
        UserAdded added = new UserAdded(id, username, Set.of(role));
        UserAdded ignored = writes.write(WriteRequest.internal(id), Chains.IDENTITY, UserAdded.class, chain -> {
                    if (users.named(username).isEmpty()) {
                        users.save(new UserRow(id, username, hash, added.roles(), chain.recordedAt()));
                        chain.append("USER_ADDED", id, chain.recordedAt(), added);
                    }
                    return added;
                })
                .value();
    }

    /** User names by id, for showing who did what. */
    public Map<UUID, String> names(Collection<UUID> ids) {
        Map<UUID, String> names = new HashMap<>();
        users.findAllById(Set.copyOf(ids)).forEach(user -> names.put(user.getId(), user.username()));
        return names;
    }

    /** The user of this name, whatever became of them. */
    public Optional<UUID> named(String username) {
        return users.named(username).map(UserRow::getId);
    }

    /** The roles of a user now. */
    public Set<Role> rolesOf(UUID id) {
        return users.withRoles(id).map(UserRow::roles).orElse(Set.of());
    }
}
