package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import java.time.Instant;
import java.util.Set;

/** How SNMP agents let us in. Its secrets are sealed; {@link Credentials#secrets} opens them for the poller alone. */
@Entity
public class Credential extends PanacheEntityBase {
    /** Drawn from the table's sequence before the row is written, since the secrets are sealed to it. */
    @Id
    public Long id;

    /** Whose devices may use it; null for every customer's. */
    @ManyToOne(fetch = FetchType.LAZY)
    @JoinColumn(name = "customer_id")
    public Customer customer;

    /** The one site whose devices may use it; null for every site of the customer. */
    @ManyToOne(fetch = FetchType.LAZY)
    @JoinColumn(name = "site_id")
    public Site site;

    /** Order among credentials of the same owner: 1 is tried first. */
    public int turn;

    public String name;

    /** 1, 2 (v2c) or 3. */
    public short version;

    /** SNMPv3 user; empty for v1 and v2c. */
    @Column(name = "user_name")
    public String userName = "";

    /** NO_AUTH, AUTH or AUTH_PRIV (RFC 3411). */
    public String level = "NO_AUTH";

    /** SHA1, SHA224, SHA256, SHA384, SHA512, or empty. */
    @Column(name = "auth_protocol")
    public String authProtocol = "";

    /** AES128, AES192, AES256, or empty. */
    @Column(name = "priv_protocol")
    public String privProtocol = "";

    @Column(name = "community")
    byte[] sealedCommunity;

    @Column(name = "auth_secret")
    byte[] sealedAuth;

    @Column(name = "priv_secret")
    byte[] sealedPriv;

    /** Noted when a secret is entered: it is a word that anybody tries first. */
    @Column(name = "known_word")
    boolean knownWord;

    /** Noted when a secret is entered: it is short enough to be guessed by machine. */
    @Column(name = "short_secret")
    boolean shortSecret;

    @Column(name = "created_at", insertable = false, updatable = false)
    public Instant createdAt;

    /** What is weak about it, the worst first. */
    public Set<CredentialWeakness> weaknesses() {
        return CredentialWeakness.of(this);
    }

    /** Whether a device of that site of that customer may use it. */
    public boolean usableAt(long siteId, long customerId) {
        return (customer == null || customer.id == customerId) && (site == null || site.id == siteId);
    }

    /** Whose it is, in words: {@code every customer}, a customer's name, or a site's name and its customer's. */
    public String owner() {
        if (customer == null) {
            return "every customer";
        }
        return site == null ? customer.name : site.name + ", " + customer.name;
    }

    /** Version and protocols as a person reads them, never a secret. */
    public String summary() {
        if (version < 3) {
            return version == 1 ? "SNMP v1" : "SNMP v2c";
        }
        String protocols =
                switch (level) {
                    case "AUTH" -> " with " + authProtocol;
                    case "AUTH_PRIV" -> " with " + authProtocol + " and " + privProtocol;
                    default -> " without authentication";
                };
        return "SNMP v3 user " + userName + protocols;
    }
}
