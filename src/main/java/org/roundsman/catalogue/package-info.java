/**
 * Models as they are sold and promised: list price, warranty terms, announced ends, and the lines of firmware that they take;
 * CSV in and out. The columns of a model lie in {@code fleet}; what they mean is said here. May import shared, system, audit,
 * fleet. Owns firmware_line.
 */
package org.roundsman.catalogue;
