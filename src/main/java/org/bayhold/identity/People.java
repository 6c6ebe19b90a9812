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
import org.bayhold.journal.WriteRequest;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.refusal.Refusal;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The users of the shop. */
@Component
public class People {
    private final Users users;
    private final WriteTemplate writes;
    private final PasswordEncoder passwords;

    People(Users users, WriteTemplate writes, PasswordEncoder passwords) {
        this.users = users;
        this.writes = writes;
        this.passwords = passwords;
    }

    /** Who a person is, as the journal keeps it. */
    record UserAdded(UUID id, String username, Set<Role> roles) {}

    /** The user with this name, with a fresh password; made where there is none. Safe when two servers do it at once. */
    public UUID ensure(String username, Set<Role> roles, String password) {
        String hash = Objects.requireNonNull(passwords.encode(password));
        Optional<UserRow> there = users.named(username);
        if (there.isPresent()) {
            setPassword(there.get().getId(), hash);
            return there.get().getId();
        }
        UUID id = Ids.next();
        return writes.write(WriteRequest.internal(id), Chains.IDENTITY, UserAdded.class, chain -> {
                    // the other server may have been faster
                    Optional<UserRow> other = users.named(username);
                    if (other.isPresent()) {
                        throw Refusal.conflict("username", "user.exists", username);
                    }
                    UserAdded added = new UserAdded(id, username, roles);
                    users.save(new UserRow(id, username, hash, roles, chain.recordedAt()));
                    chain.append("USER_ADDED", id, chain.recordedAt(), added);
                    return added;
                })
                .value()
                .id();
    }

    @Transactional
    void setPassword(UUID id, String hash) {
        users.password(id, hash);
    }

    /** User names by id, for showing who did what. */
    public Map<UUID, String> names(Collection<UUID> ids) {
        Map<UUID, String> names = new HashMap<>();
        users.findAllById(Set.copyOf(ids)).forEach(user -> names.put(user.getId(), user.username()));
        return names;
    }

    public Optional<UUID> idOf(String username) {
        return users.named(username).map(UserRow::getId);
    }
}
