package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.stream.Collectors;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Accounts;
import org.roundsman.people.NewPerson;
import org.roundsman.people.Role;
import org.roundsman.system.DataFolder;

/**
 * The sign-ins of the demonstration: one for each role, with random passwords that are written to a file for the person
 * who started it. They need not be changed.
 */
@ApplicationScoped
class DemoSignIns {

    private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
    private static final int LENGTH = 12;

    private final Accounts accounts;
    private final Customers customers;
    private final DataFolder folder;
    private final SecureRandom random = new SecureRandom();

    @Inject
    DemoSignIns(Accounts accounts, Customers customers, DataFolder folder) {
        this.accounts = accounts;
        this.customers = customers;
        this.folder = folder;
    }

    /** Makes those that are not there yet. */
    void ensure() {
        Customer seen = customers.all(CustomerScope.everyone()).stream()
                .filter(customer -> customer.name.startsWith("Pebblegate"))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the invented fleet has not been sown"));
        StringBuilder list = new StringBuilder();
        add(list, new NewPerson("technician", "Technician on call", Role.TECHNICIAN, Optional.empty()), "");
        add(list, new NewPerson("accounts", "Account manager", Role.ACCOUNT_MANAGER, Optional.empty()), "");
        add(list, new NewPerson("owner", "Owner of Fernhollow Networks", Role.OWNER, Optional.empty()), "");
        add(
                list,
                new NewPerson("viewer", seen.name, Role.VIEWER, Optional.of(seen.id)),
                " (sees " + seen.name + " only)");
        if (!list.isEmpty()) {
            write(list.toString());
        }
    }

    private void add(StringBuilder list, NewPerson person, String remark) {
        String password = random.ints(LENGTH, 0, LETTERS.length())
                .mapToObj(i -> String.valueOf(LETTERS.charAt(i)))
                .collect(Collectors.joining());
        if (accounts.ensure(person, password, false)) {
            list.append(String.format("Sign in:   %-12s %s%s%n", person.name(), password, remark));
        }
    }

    private void write(String list) {
        Path file = folder.path().resolve("sign-ins.txt");
        try {
            if (!Files.exists(file)) {
                Files.createFile(
                        file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            }
            Files.writeString(file, list, java.nio.file.StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException("The sign-ins of the demonstration cannot be written to " + file, e);
        }
    }
}
