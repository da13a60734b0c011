/**
 * Who is due, rounds, back-off. Owns the ports ReadingSink and PollTargets, whose implementation boot chooses by role.
 * May import shared, system, measure, fleet, snmp. Owns no tables.
 */
package org.roundsman.polling;
