package org.roundsman.system;

/**
 * How to reach the database.
 *
 * @param url JDBC address without user or password
 * @param user role to sign in as
 * @param password its password, empty when the server asks for none
 */
public record DatabaseAddress(String url, String user, String password) {

    /** Without the password: this may end up in a log. */
    @Override
    public String toString() {
        return user + " at " + url;
    }
}
