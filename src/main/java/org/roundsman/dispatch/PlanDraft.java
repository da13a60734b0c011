package org.roundsman.dispatch;

import java.util.List;
import org.roundsman.reports.ReportLook;

/**
 * A plan as somebody enters it; see {@link ReportPlan}. Faults are named by these names.
 *
 * @param zone IANA name
 * @param language BCP 47 tag of one of the languages of reports
 * @param recipients mail addresses; empty ones and repeats are left out
 */
public record PlanDraft(
        boolean active,
        int day,
        int hour,
        String zone,
        String language,
        ReportLook.PaperSize paper,
        List<String> recipients,
        boolean approval,
        boolean costs,
        int keepMonths) {}
