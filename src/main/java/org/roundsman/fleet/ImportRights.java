package org.roundsman.fleet;

/**
 * What the rows of an import may touch.
 *
 * @param scope whose data; a row about anybody else's is refused
 * @param catalogue whether models may be added and changed; they are no single customer's, so that it takes every customer's
 *     scope as well
 */
public record ImportRights(CustomerScope scope, boolean catalogue) {

    public ImportRights {
        catalogue = catalogue && scope.onlyCustomer() == null;
    }
}
