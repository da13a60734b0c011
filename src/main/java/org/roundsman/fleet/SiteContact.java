package org.roundsman.fleet;

import jakarta.persistence.Embeddable;
import java.util.Objects;

/** Somebody to call about a site. */
@Embeddable
public class SiteContact {
    public String name;
    public String duty = "";
    public String phone = "";
    public String email = "";

    protected SiteContact() {}

    public SiteContact(String name, String duty, String phone, String email) {
        this.name = name;
        this.duty = duty;
        this.phone = phone;
        this.email = email;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SiteContact that
                && name.equals(that.name)
                && duty.equals(that.duty)
                && phone.equals(that.phone)
                && email.equals(that.email);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, duty, phone, email);
    }
}
