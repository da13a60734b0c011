package org.roundsman.reports;

import java.time.Instant;
import java.util.List;

/**
 * Everything that a report tells, as values: what is stored when it is sent, and what its page, its PDF, its mail and its
 * tables are made from. What was not observed is empty, never zero. Figures are rounded to four decimals, so that the same
 * data gives the same report to the last digit.
 *
 * @param form number of this form; rises when the meaning of a part changes
 * @param asOf the moment for which states hold that have no past, such as firmware and warranty
 * @param invented the data is made up, and every page says so
 * @param sites by name
 * @param outages of all sites, by their begin
 * @param radios of all sites, by site, device and number
 * @param rooms that need attention, the worst first
 * @param recommendations the most urgent first
 */
public record Report(
        int form,
        ReportSubject subject,
        Instant asOf,
        boolean invented,
        Watch whole,
        Watch service,
        Crowd crowd,
        List<SiteFigures> sites,
        List<Outage> outages,
        List<RadioFigures> radios,
        List<Room> rooms,
        Equipment equipment,
        Handling handling,
        WorkDone work,
        List<Recommendation> recommendations) {

    /** The form that is made today. */
    public static final int FORM = 1;

    public Report {
        sites = List.copyOf(sites);
        outages = List.copyOf(outages);
        radios = List.copyOf(radios);
        rooms = List.copyOf(rooms);
        recommendations = List.copyOf(recommendations);
    }

    /** The same for a customer who is shown no list prices. */
    public Report withoutCosts() {
        return new Report(
                form,
                subject,
                asOf,
                invented,
                whole,
                service,
                crowd,
                sites,
                outages,
                radios,
                rooms,
                equipment.withoutCosts(),
                handling,
                work,
                recommendations.stream().map(Recommendation::withoutCost).toList());
    }
}
