package org.roundsman.catalogue;

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

/** A family of firmware: models that take the same releases, and how the versions of it are compared. */
@Entity
@Table(name = "firmware_line")
public class FirmwareLine extends PanacheEntityBase {

    /** How versions of a line are compared. */
    public enum Scheme {
        /** Numbers between dots, with suffixes. */
        DOTTED("dotted numbers"),
        /** Semantic Versioning 2.0.0. */
        SEMANTIC("Semantic Versioning 2.0"),
        /** By the groups of a regular expression. */
        PATTERN("a pattern");

        private final String word;

        Scheme(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    public Long id;

    /** Unique without regard to case. */
    public String name;

    @Enumerated(EnumType.STRING)
    public Scheme scheme = Scheme.DOTTED;

    /** Regular expression whose groups are compared in turn; empty with the other schemes. */
    public String pattern = "";

    public String note = "";

    @Column(name = "created_at", insertable = false, updatable = false)
    public Instant createdAt;
}
