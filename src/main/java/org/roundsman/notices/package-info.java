/**
 * What is told to whom: choices of people, threads of notices, the outbox with its senders (mail and webhook), escalation and
 * digests. May import shared, system, audit, fleet, people, alarms, mail. Owns notice_cursor, notice_person,
 * notice_person_customer, notice_webhook, notice_chain, notice_chain_step, notice_thread, notice_outbox.
 */
package org.roundsman.notices;
