/**
 * The vocabulary of what is measured: metric, unit, values, facts, outcome, reading. Plain Java without a container.
 * May import shared. Owns no tables.
 */
package org.roundsman.measure;
