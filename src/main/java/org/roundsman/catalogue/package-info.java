/**
 * Models as they are sold and promised: list price, warranty terms, announced ends, and the lines of firmware that they take;
 * what they mean. The columns of a model, their checks and their CSV lie in {@code fleet}. May import shared, system, audit,
 * fleet. Owns firmware_line.
 */
package org.roundsman.catalogue;
