/**
 * Makes a PDF of a page that is well-formed XML, with our own fonts inside and nothing fetched from anywhere. Knows no feature.
 */
package org.roundsman.paper;
