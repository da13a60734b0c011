/**
 * Sending a mail by SMTP (RFC 5321), and reading by IMAP what became of mails (RFC 3464). Knows nothing of alarms or reports. May
 * import shared and system. Owns no tables.
 */
package org.roundsman.mail;
