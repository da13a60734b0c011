/**
 * Until when what is covered, by which terms and contracts, with which evidence; what ends when and what it costs; and the
 * calendar of it. May import shared, system, audit, fleet, alarms, rules, catalogue.
 * Reads unit and unit_stay, which claims owns, by SQL only. Owns warranty_contract, contract_unit, evidence, calendar_address.
 */
package org.roundsman.warranty;
