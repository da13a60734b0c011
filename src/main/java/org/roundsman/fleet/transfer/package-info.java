/**
 * Import and export of customers, sites, devices and purchases as CSV (RFC 4180): decoding, reading, the dry run, writing.
 * Private to fleet. Owns import_run, import_file, import_row and purchase.
 */
package org.roundsman.fleet.transfer;
