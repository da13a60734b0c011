package org.roundsman.people;

import java.util.Optional;
import java.util.Set;

/**
 * A personal token that somebody wants.
 *
 * @param name 1 to 60 characters, so that its person knows it again
 * @param scopes what it may do besides reading
 * @param days how long it is good for, at least 1
 * @param customerId the one customer it is narrowed to
 */
public record NewToken(String name, Set<TokenScope> scopes, int days, Optional<Long> customerId) {}
