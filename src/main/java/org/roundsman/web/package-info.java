/** Qute pages by area and their view models, JSON API, sign-in. No SQL, no rules. May import every root but demo and collector. Owns no tables. */
package org.roundsman.web;
