/**
 * What devices send by themselves: receives traps and informs, finds the device, puts what they say on its timeline and
 * has a round made. What ports are called it asks by its port PortNames. May import shared, system, timeline, measure, fleet, snmp, profiles, polling. Owns own_engine and
 * device_notification.
 */
package org.roundsman.traps;
