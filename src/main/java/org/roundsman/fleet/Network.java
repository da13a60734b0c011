package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;

/** One SSID of a site, with its purpose. */
@Entity
public class Network extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Integer id;

    @Column(name = "site_id")
    public long siteId;

    public String ssid;

    /** {@code staff}, {@code guest} or {@code other}. */
    public String purpose = "other";
}
