/** Database start, transactions, jobs, clock, key file, our own health. May import shared. Owns no tables. */
package org.roundsman.system;
