/**
 * When an alarm is raised and when it clears: shipped rules, the values that people lay over them, the folds that go over
 * readings and events, and trying other values over the past. May import shared, system, audit, measure, timeline, fleet,
 * polling, readings, alarms. Owns rule_override, rule_memory.
 */
package org.roundsman.rules;
