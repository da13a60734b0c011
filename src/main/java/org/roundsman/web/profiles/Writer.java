package org.roundsman.web.profiles;

import jakarta.enterprise.context.RequestScoped;
import org.roundsman.people.Role;
import org.roundsman.web.page.Visitor;

/** Whether the person may write profiles: technicians and owners may, all of the firm may read. */
@RequestScoped
class Writer {

    private final Visitor visitor;

    Writer(Visitor visitor) {
        this.visitor = visitor;
    }

    boolean writes() {
        Role role = visitor.person().role();
        return role == Role.TECHNICIAN || role == Role.OWNER;
    }
}
