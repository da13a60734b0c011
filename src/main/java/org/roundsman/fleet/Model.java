package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import java.math.BigDecimal;
import java.time.LocalDate;

/** What the maker sells: what it is, what it costs, what is promised with it, and until when. */
@Entity
public class Model extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Long id;

    public String maker;
    public String name;

    @Enumerated(EnumType.STRING)
    public DeviceKind kind;

    /** The sysObjectID that this model answers with, in dotted numbers; null where not known. */
    @Column(name = "object_id")
    public String objectId;

    public short radios;

    /** Spatial streams of the strongest radio; null where not known. */
    public Short streams;

    /** Bands in GHz, such as {@code 2.4,5}; empty where not known. */
    public String bands = "";

    /** {@code internal}, {@code external}, or empty where not known. */
    public String antenna = "";

    public boolean outdoor;

    /** Power over Ethernet class 0 to 8 (IEEE 802.3); null for mains or not known. */
    @Column(name = "poe_class")
    public Short poeClass;

    /** Fed from the mains; never together with a power class. */
    public boolean mains;

    /** What holds it, such as {@code ceiling rail} or {@code mast clamp}; empty where not known. */
    public String mount = "";

    /** Of one piece, without tax; null where not known. */
    @Column(name = "list_price")
    public BigDecimal listPrice;

    /** ISO 4217 code of the list price; empty without one. */
    public String currency = "";

    /** The family of firmware that it takes; null where none is entered. */
    @Column(name = "firmware_line_id")
    public Long firmwareLineId;

    /** Kind of warranty terms; empty where none are entered. What the four columns mean together, the catalogue says. */
    @Column(name = "terms_kind")
    public String termsKind = "";

    /** What the months count from; empty where they count from nothing. */
    @Column(name = "terms_from")
    public String termsFrom = "";

    /** 1 to 600, or null where the terms have none. */
    @Column(name = "terms_months")
    public Short termsMonths;

    /** {@code ADVANCE}, {@code BENCH}, or empty where not known. */
    @Column(name = "terms_service")
    public String termsService = "";

    /** Last day on which the maker sells it; null where not announced. */
    @Column(name = "end_of_sale")
    public LocalDate endOfSale;

    /** Where that day stands written. */
    @Column(name = "end_of_sale_source")
    public String endOfSaleSource = "";

    /** Last day of firmware from the maker; null where not announced. */
    @Column(name = "end_of_software")
    public LocalDate endOfSoftware;

    @Column(name = "end_of_software_source")
    public String endOfSoftwareSource = "";

    /** Last day of any help from the maker; null where not announced. */
    @Column(name = "end_of_support")
    public LocalDate endOfSupport;

    @Column(name = "end_of_support_source")
    public String endOfSupportSource = "";

    public String note = "";
}
