package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import java.time.Instant;

/** How SNMP agents let us in. Its secrets are sealed; {@link Credentials#secrets} opens them for the poller alone. */
@Entity
public class Credential extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Long id;

    /** Whose devices may use it; null for every customer's. */
    @ManyToOne(fetch = FetchType.LAZY)
    @JoinColumn(name = "customer_id")
    public Customer customer;

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

    @Column(name = "created_at", insertable = false, updatable = false)
    public Instant createdAt;

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
