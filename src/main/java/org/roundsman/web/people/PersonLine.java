package org.roundsman.web.people;

import java.util.List;
import org.roundsman.fleet.Customer;
import org.roundsman.people.Person;

/** A person in the list, as shown. */
record PersonLine(long id, String name, String shownName, String role, String state, boolean disabled, boolean locked) {

    static PersonLine of(Person person, List<Customer> customers) {
        return new PersonLine(
                person.id(),
                person.name(),
                person.shownName(),
                person.role().word() + ofCustomer(person, customers),
                state(person),
                person.disabled(),
                person.lockedUntil().isPresent());
    }

    private static String ofCustomer(Person person, List<Customer> customers) {
        return customers.stream()
                .filter(customer ->
                        person.customerId().filter(customer.id::equals).isPresent())
                .findFirst()
                .map(customer -> " of " + customer.name)
                .orElse("");
    }

    private static String state(Person person) {
        if (person.disabled()) {
            return "disabled";
        }
        if (person.lockedUntil().isPresent()) {
            return "locked after wrong passwords";
        }
        return person.mustChange() ? "must change the password" : "may sign in";
    }
}
