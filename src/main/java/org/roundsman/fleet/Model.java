package org.roundsman.fleet;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;

/** What the maker sells. */
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
}
