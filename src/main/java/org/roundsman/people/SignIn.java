package org.roundsman.people;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;

/** One row of table sign_in: a browser that is signed in. */
@Entity
@Table(name = "sign_in")
public class SignIn extends PanacheEntityBase {

    @Id
    @Column(name = "token_hash")
    public byte[] tokenHash;

    @ManyToOne(fetch = FetchType.EAGER, optional = false)
    @JoinColumn(name = "account_id")
    public Account account;

    @Column(name = "started_at")
    public Instant startedAt;

    @Column(name = "seen_at")
    public Instant seenAt;
}
