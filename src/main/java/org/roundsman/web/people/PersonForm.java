package org.roundsman.web.people;

import java.util.Arrays;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.people.NewPerson;
import org.roundsman.people.PeopleException;
import org.roundsman.people.Role;

/** What the form for a new account sent. */
record PersonForm(
        @RestForm String name,
        @RestForm String shownName,
        @RestForm String role,
        @RestForm String customer) {

    static PersonForm blank() {
        return new PersonForm("", "", Role.TECHNICIAN.name(), "");
    }

    /**
     * @throws PeopleException naming the field that cannot be read
     */
    NewPerson person() {
        Role chosen = Arrays.stream(Role.values())
                .filter(one -> one.name().equals(role))
                .findFirst()
                .orElseThrow(() -> new PeopleException("role", "Choose a role."));
        return new NewPerson(text(name).strip(), text(shownName).strip(), chosen, customerId(chosen));
    }

    private Optional<Long> customerId(Role chosen) {
        if (chosen != Role.VIEWER || text(customer).isBlank()) {
            return Optional.empty();
        }
        try {
            return Optional.of(Long.valueOf(customer));
        } catch (NumberFormatException e) {
            throw new PeopleException("customer", "Choose one of the customers.");
        }
    }

    private static String text(String value) {
        return value == null ? "" : value;
    }
}
