package org.roundsman.web.triage;

/**
 * One thing that happened before an alarm.
 *
 * @param change from what to what, or empty
 */
record BeforeLine(String at, String device, String link, String title, String change) {}
