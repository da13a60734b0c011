/** Accounts, roles, sign-ins and lock-out. May import shared, system, fleet. Owns account, sign_in. */
package org.roundsman.people;
