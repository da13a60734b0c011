/** Role switch, start-up order and wiring. May import everything; nothing imports it. Owns no tables. */
package org.roundsman.boot;
