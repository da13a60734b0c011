package org.roundsman.people;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.roundsman.audit.AuditEntry.Subject;

/** One row of table personal_token. */
@Entity
@Table(name = "personal_token")
public class PersonalToken extends PanacheEntityBase {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Long id;

    @ManyToOne(fetch = FetchType.EAGER, optional = false)
    @JoinColumn(name = "account_id")
    public Account account;

    public String name;

    public byte[] hash;

    /** Names of {@link TokenScope}, with commas. */
    public String scopes;

    @Column(name = "customer_id")
    public Long customerId;

    @Column(name = "created_at", updatable = false)
    public Instant createdAt;

    @Column(name = "expires_at")
    public Instant expiresAt;

    @Column(name = "revoked_at")
    public Instant revokedAt;

    @Column(name = "used_at")
    public Instant usedAt;

    @Column(name = "used_from")
    public String usedFrom = "";

    Set<TokenScope> scopeSet() {
        return TokenScope.read(scopes);
    }

    HeldToken held() {
        return new HeldToken(
                id,
                account.id,
                account.name,
                name,
                scopeSet(),
                Optional.ofNullable(customerId),
                createdAt,
                expiresAt,
                Optional.ofNullable(revokedAt),
                Optional.ofNullable(usedAt),
                usedFrom);
    }

    /** As the audit names it. */
    Subject subject() {
        return new Subject(
                "token", id, name + " of " + account.name, customerId == null ? account.customerId : customerId);
    }
}
