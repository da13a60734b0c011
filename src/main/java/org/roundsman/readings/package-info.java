/**
 * Stores what rounds bring back (COPY), keeps condition spans, roll-ups and retention, and answers questions over time.
 * May import shared, system, measure, timeline, fleet, planned, snmp, polling. Owns reading_*, quarter_*, day_*, rollup_mark, day_mark,
 * span, device_now, readings_state.
 */
package org.roundsman.readings;
