/**
 * Which firmware is to run where, what runs, what has to be done about it, and how an upgrade went. May import shared, system,
 * audit, timeline, measure, fleet, planned, readings, alarms, rules, catalogue.
 * Owns firmware_release, firmware_minimum, firmware_pilot_site, firmware_exception, firmware_change, firmware_change_figure,
 * firmware_look.
 */
package org.roundsman.firmware;
