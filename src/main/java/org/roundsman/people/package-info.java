/**
 * Accounts, roles, sign-ins and lock-out. May import shared, system, fleet. Owns account, sign_in.
 *
 * <p>A sign-in lives on the server: the browser's cookie holds a random token, the database its hash.
 */
package org.roundsman.people;
