package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.OrderBy;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** One address of a customer. */
@Entity
public class Site extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Long id;

    @ManyToOne(fetch = FetchType.LAZY, optional = false)
    @JoinColumn(name = "customer_id")
    public Customer customer;

    /** Unique within its customer, without regard to case. */
    public String name;

    /** IANA name; days and months of the site are counted in it. */
    @Column(name = "time_zone")
    public String timeZone;

    public String street = "";
    public String postcode = "";
    public String town = "";

    /** ISO 3166-1 alpha-2, or empty. */
    public String country = "";

    /** How to get in. */
    @Column(name = "access_note")
    public String accessNote = "";

    /** Rate towards the site in kbit/s (1000 bit); null where not known. */
    @Column(name = "uplink_down_kbit")
    public Integer uplinkDownKbit;

    /** Rate from the site in kbit/s (1000 bit); null where not known. */
    @Column(name = "uplink_up_kbit")
    public Integer uplinkUpKbit;

    /** For how much of its service hours in a month its Wi-Fi is to be there; percent, above 0 up to 100. */
    @Column(name = "availability_target")
    public double availabilityTarget = 99.5;

    /** Hours in which the site needs its Wi-Fi, in its own time; empty means around the clock. */
    @ElementCollection
    @CollectionTable(name = "site_hours", joinColumns = @JoinColumn(name = "site_id"))
    @OrderBy("weekday, opens")
    public List<ServiceHours> hours = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "site_contact", joinColumns = @JoinColumn(name = "site_id"))
    @OrderBy("name")
    public List<SiteContact> contacts = new ArrayList<>();

    public ZoneId zone() {
        return ZoneId.of(timeZone);
    }
}
