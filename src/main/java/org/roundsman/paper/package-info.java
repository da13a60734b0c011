/**
 * Makes a PDF of a page that is well-formed XML, with our own fonts inside and nothing fetched from anywhere:
 * pictures are SVG or stand in the page itself. Knows no feature.
 * May import nothing of ours. Owns no tables.
 */
package org.roundsman.paper;
