/**
 * What fails under warranty: claims, spares, and which unit stood where from when to when. A device is a place; its name,
 * port, readings and history go on when another unit takes it. May import shared, system, audit, timeline, measure, fleet,
 * topology, readings, alarms, catalogue, warranty.
 * Owns unit, unit_stay, unit_cursor, store_room, store_minimum, spare, claim, claim_change.
 *
 * <p>{@link org.roundsman.claims.Units} answers which unit is and was where, {@link org.roundsman.claims.Replacements} puts
 * another unit in a place, {@link org.roundsman.claims.Claims} and {@link org.roundsman.claims.ClaimBook} open, move and list
 * claims, {@link org.roundsman.claims.Spares} and {@link org.roundsman.claims.StoreRooms} keep what lies in store.
 */
package org.roundsman.claims;
