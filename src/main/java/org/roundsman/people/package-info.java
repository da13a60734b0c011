/**
 * Accounts, roles, sign-ins, lock-out and personal tokens. May import shared, system, audit, fleet. Owns account,
 * sign_in and personal_token.
 *
 * <p>A sign-in lives on the server: the browser's cookie holds a random token, the database its hash.
 */
package org.roundsman.people;
