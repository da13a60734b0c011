/**
 * At most ten plain types that every feature may use; no feature words. May import the JDK only. Owns no tables.
 */
package org.roundsman.shared;
