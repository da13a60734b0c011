/**
 * The alarm model (RFC 8632): types, severities, resources, alarms with their status changes and episodes, what people do with
 * them, and how good the alarms are. Knows no readings: what is seen comes in as signals. May import shared, system, audit,
 * fleet. Inside: life is the state machine, store the tables, quality the figures. Owns alarm, alarm_episode, alarm_change,
 * alarm_act, alarm_affected.
 */
package org.roundsman.alarms;
