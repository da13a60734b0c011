/**
 * Looking for devices at a site: address ranges, sweeps, recognising what answers, adopting it into the fleet. The root
 * is for pages and the API: {@link org.roundsman.discovery.Sweeps} plans, starts and ends sweeps, {@link
 * org.roundsman.discovery.Reviews} lists what they found, {@link org.roundsman.discovery.Adoption} takes it up. {@code run}
 * asks, {@code recognise} holds the rules, {@code store} the tables.
 *
 * <p>May import shared, system, audit, timeline, measure, fleet, snmp, profiles, polling. Owns sweep_plan, sweep_aside, sweep,
 * sweep_address, sweep_finding.
 */
package org.roundsman.discovery;
