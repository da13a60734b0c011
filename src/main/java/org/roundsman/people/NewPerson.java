package org.roundsman.people;

import java.util.Optional;

/**
 * Who is to get an account.
 *
 * @param name sign-in name: 2 to 60 letters, digits, dots, hyphens, underscores or at signs
 * @param shownName what pages call the person; blank = the sign-in name
 * @param customerId required for a viewer, refused for everybody else
 */
public record NewPerson(String name, String shownName, Role role, Optional<Long> customerId) {}
