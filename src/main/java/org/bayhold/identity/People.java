package org.bayhold.identity;

import java.util.Collection;
import java.util.HashMap;
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
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/** The users of the shop. */
@Component
public class People {
    private final Users users;
    private final WriteTemplate writes;
    private final Standing standing;
    private final PasswordEncoder passwords;

    People(Users users, WriteTemplate writes, Standing standing, PasswordEncoder passwords) {
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
