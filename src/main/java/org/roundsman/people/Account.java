package org.roundsman.people;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.audit.AuditEntry.Subject;

/** One row of table account. */
@Entity
@Table(name = "account")
public class Account extends PanacheEntityBase {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Long id;

    public String name;

    @Column(name = "shown_name")
    public String shownName = "";

    @Enumerated(EnumType.STRING)
    public Role role;

    @Column(name = "customer_id")
    public Long customerId;

    @Column(name = "password_hash")
    public String passwordHash;

    @Column(name = "must_change")
    public boolean mustChange;

    public boolean disabled;

    public int failures;

    @Column(name = "locked_until")
    public Instant lockedUntil;

    @Column(name = "created_at", updatable = false)
    public Instant createdAt;

    static Optional<Account> named(String name) {
        return find("lower(name) = lower(?1)", name).firstResultOptional();
    }

    /** As the audit names it. */
    Subject subject() {
        return new Subject("account", id, name, customerId);
    }

    Person person(Instant now) {
        return new Person(
                id,
                name,
                shownName,
                role,
                Optional.ofNullable(customerId),
                mustChange,
                disabled,
                Optional.ofNullable(lockedUntil).filter(now::isBefore));
    }
}
