/**
 * Makes a PDF of a page that is well-formed XML, with our own fonts inside and nothing fetched from anywhere. Knows no feature.
 * May import nothing of ours. Owns no tables.
 */
package org.roundsman.paper;
