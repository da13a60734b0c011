/**
 * Cause and impact: watches what rounds say of all devices, raises the alarms of silent and refusing devices, lost sites and
 * lost view, works out what is behind every active alarm and who suffers from it. Finding causes is plain Java. May import
 * shared, system, timeline, measure, fleet, polling, topology, readings, planned, alarms, rules. Owns no table.
 */
package org.roundsman.triage;
