/**
 * What becomes of reports: when they are built, who reads them and adds a remark, who they are sent to, and where they are kept so
 * that they are the same document a year later. May import shared, system, audit, fleet, people, mail and reports. Owns the
 * tables report, report_check, report_plan, report_brand, report_mail and report_link.
 */
package org.roundsman.dispatch;
