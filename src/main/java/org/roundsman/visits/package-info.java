/**
 * What somebody must know and bring who drives to a site because of an alarm. May import shared, measure, fleet, topology,
 * readings, alarms. Owns no tables.
 */
package org.roundsman.visits;
