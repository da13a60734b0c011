/**
 * What fails under warranty: claims, spares, and which unit stood where from when to when. May import shared, system, audit,
 * timeline, measure, fleet, topology, readings, alarms, catalogue, warranty.
 * Owns claim, claim_change, spare, unit_stay.
 */
package org.roundsman.claims;
