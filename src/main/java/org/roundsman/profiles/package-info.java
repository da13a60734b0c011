/**
 * Profiles that people write, in versions, and which are in use; walks of devices, what profiles make of them, and test
 * cases. May import shared, system, audit, measure, fleet and snmp. Owns written_profile, profile_version, stored_walk,
 * profile_case; asks the tables of fleet which devices there are.
 */
package org.roundsman.profiles;
