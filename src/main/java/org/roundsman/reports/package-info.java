/**
 * The report that a customer gets about a stretch of time: its figures, its words in the customer's language, its charts, its
 * page and its PDF. The root holds the report as values and what makes them; {@code figures} reads and works out,
 * {@code words} holds the catalogues and the summary, {@code chart} draws, {@code document} lays out. May import shared, system,
 * measure, timeline, fleet, planned, readings, alarms, triage, catalogue, firmware, warranty, claims and paper. Owns no tables.
 */
package org.roundsman.reports;
