/**
 * Planned work: windows in which a site or a device is worked on; time in it counts for nobody. May import shared, system,
 * audit, fleet. Owns planned_work and planned_work_end.
 *
 * <p>{@link org.roundsman.planned.PlannedWork} answers questions of other features, {@link org.roundsman.planned.Planning}
 * makes and changes windows, {@link org.roundsman.planned.PlannedBoard} lists them for people.
 */
package org.roundsman.planned;
