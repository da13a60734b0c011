package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import java.time.Instant;

/** Anything polled: access point, switch or gateway. */
@Entity
public class Device extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Long id;

    @ManyToOne(fetch = FetchType.LAZY, optional = false)
    @JoinColumn(name = "site_id")
    public Site site;

    @Enumerated(EnumType.STRING)
    public DeviceKind kind;

    /** Unique within its site, without regard to case. */
    public String name;

    /** Address or host name. */
    public String host;

    /** UDP port, 1 to 65535. */
    public int port = 161;

    @ManyToOne(fetch = FetchType.LAZY, optional = false)
    @JoinColumn(name = "credential_id")
    public Credential credential;

    @ManyToOne(fetch = FetchType.LAZY)
    @JoinColumn(name = "model_id")
    public Model model;

    /** Room, ceiling or mast. */
    public String place = "";

    /** Seconds between two rounds, 10 to 3600. */
    @Column(name = "interval_s")
    public int intervalSeconds = 60;

    /** Nobody looks while this is set. */
    public boolean paused;

    @Column(name = "created_at", insertable = false, updatable = false)
    public Instant createdAt;
}
