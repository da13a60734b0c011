/**
 * Who is due, rounds, back-off. Owns the ports ReadingSink and PollTargets, whose implementation boot chooses by role.
 * May import shared, system, measure, fleet, snmp, profiles. Owns no tables.
 */
package org.roundsman.polling;
