/**
 * SNMP sessions, profiles, poll plans, decoding, counters to rates. Knows no customers and no database. May import
 * shared and measure. Owns no tables.
 */
package org.roundsman.snmp;
