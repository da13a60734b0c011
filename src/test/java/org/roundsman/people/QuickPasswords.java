package org.roundsman.people;

import io.quarkus.test.Mock;
import jakarta.enterprise.context.ApplicationScoped;

/** The same with the least cost that bcrypt has: tests sign in thousands of times, which else is a third of their work. */
@Mock
@ApplicationScoped
class QuickPasswords extends Passwords {

    private static final int LEAST = 4;

    QuickPasswords() {
        super(LEAST);
    }
}
