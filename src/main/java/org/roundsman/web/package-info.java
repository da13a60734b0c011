/**
 * Qute pages by area and their view models, sign-in. No SQL, no rules. May import every root but demo and collector.
 * Owns no tables.
 *
 * <p>One sub-package per area of pages; {@code page} holds what every page needs, {@code chart} draws SVG.
 */
package org.roundsman.web;
