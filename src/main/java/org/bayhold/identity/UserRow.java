package org.bayhold.identity;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;

/** A person who may sign in. */
@Entity
@Table(name = "app_user")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class UserRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private String username;
    private String passwordHash;
    private boolean enabled;
    private Instant createdAt;
    private @Nullable Instant passwordSince;

    @Enumerated(EnumType.STRING)
    private Units units;

    @ElementCollection
    @CollectionTable(name = "app_user_role", joinColumns = @JoinColumn(name = "user_id"))
    @Column(name = "role")
    @Enumerated(EnumType.STRING)
    private Set<Role> roles;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected UserRow() {}

    UserRow(UUID id, String username, String passwordHash, Set<Role> roles, Instant createdAt) {
        this.id = id;
        this.username = username;
        this.passwordHash = passwordHash;
        this.enabled = true;
        this.units = Units.METRIC;
        this.roles = EnumSet.copyOf(roles);
        this.createdAt = createdAt;
    }

    /** Roles and whether the person may sign in at all, from now on. */
    void change(Set<Role> roles, boolean enabled) {
        this.roles.clear();
        this.roles.addAll(roles);
        this.enabled = enabled;
    }

    void newPassword(String passwordHash, Instant since) {
        this.passwordHash = passwordHash;
        this.passwordSince = since;
    }

    void chooseUnits(Units chosen) {
        this.units = chosen;
    }

    /** Whoever signs in as this user, at the pages. */
    Caller caller() {
        return new Caller(id, username, roles, null, false, units);
    }

    /** Since when the password is what it is; null for the first one. Told by the record, whatever a server's clock says. */
    @Nullable Instant passwordSince() {
        return passwordSince;
    }

    @Override
    public UUID getId() {
        return id;
    }

    String username() {
        return username;
    }

    String passwordHash() {
        return passwordHash;
    }

    boolean enabled() {
        return enabled;
    }

    Set<Role> roles() {
        return roles;
    }
}
