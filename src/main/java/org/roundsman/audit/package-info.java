/**
 * Who changed what, when and from where: entries that are added in the transaction of the change and never altered. May
 * import shared and system. Owns audit_entry.
 */
package org.roundsman.audit;
