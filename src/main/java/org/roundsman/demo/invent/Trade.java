package org.roundsman.demo.invent;

import static java.time.DayOfWeek.FRIDAY;
import static java.time.DayOfWeek.MONDAY;
import static java.time.DayOfWeek.SATURDAY;
import static java.time.DayOfWeek.SUNDAY;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoHours;
import org.roundsman.demo.DemoModel;
import org.roundsman.demo.SiteKind;

/** What is usual for a kind of site: names, places, people, hours, models, how full it gets. */
enum Trade {
    CLINIC(SiteKind.CLINIC, "Dental", "clinic", 7, "Practice lead", DemoModel.TR_22),
    SHOP(SiteKind.SHOP, "Booksellers", "shop", 6, "Shop keeper", DemoModel.TR_22),
    PIER(SiteKind.PIER, "Ferry Line", "pier", 18, "Harbour office", DemoModel.TR_50X),
    SCHOOL(SiteKind.SCHOOL, "School", "building", 26, "Bursar's office", DemoModel.TR_33),
    HOTEL(SiteKind.HOTEL, "Hotel", "house", 9, "Night desk", DemoModel.TR_22),
    TIMBER_YARD(SiteKind.TIMBER_YARD, "Timber", "yard", 4, "Yard foreman", DemoModel.TR_50X),
    OFFICE(SiteKind.OFFICE, "Surveyors", "office", 14, "Front office", DemoModel.TR_22);

    final SiteKind kind;
    final String business;
    final String siteWord;
    /** Clients on an ordinary access point at the busiest hour. */
    final int peak;

    final String duty;
    final DemoModel model;

    Trade(SiteKind kind, String business, String siteWord, int peak, String duty, DemoModel model) {
        this.kind = kind;
        this.business = business;
        this.siteWord = siteWord;
        this.peak = peak;
        this.duty = duty;
        this.model = model;
    }

    List<String> places() {
        return switch (this) {
            case CLINIC -> List.of("Waiting room", "Surgery 1", "Surgery 2", "Laboratory", "Staff room", "X-ray");
            case SHOP -> List.of("Till", "Fiction", "Children's corner", "Stock room", "Reading nook");
            case PIER -> List.of("Ticket hall", "Mast north", "Mast south", "Gangway", "Car deck ramp", "Boat house");
            case SCHOOL -> List.of("Classroom", "Corridor", "Library", "Workshop", "Canteen", "Music room");
            case HOTEL -> List.of("Corridor", "Lobby", "Bar", "Breakfast room", "Terrace door", "Garden suite");
            case TIMBER_YARD -> List.of("Saw shed", "Kiln", "Stacking hall", "Weighbridge", "Gate mast", "Planer shed");
            case OFFICE -> List.of("Open plan", "Meeting room", "Reception", "Archive", "Kitchen", "Plan room");
        };
    }

    /** Local service hours; none at all for a house that never closes. */
    List<DemoHours> hours() {
        return switch (this) {
            case CLINIC -> span(MONDAY, FRIDAY, 8, 18);
            case SHOP -> span(MONDAY, SATURDAY, 9, 19);
            case PIER -> span(MONDAY, SUNDAY, 5, 23);
            case SCHOOL -> span(MONDAY, FRIDAY, 7, 17);
            case HOTEL -> List.of();
            case TIMBER_YARD -> span(MONDAY, SATURDAY, 6, 16);
            case OFFICE -> span(MONDAY, FRIDAY, 7, 18);
        };
    }

    private static List<DemoHours> span(DayOfWeek first, DayOfWeek last, int opens, int closes) {
        List<DemoHours> hours = new ArrayList<>();
        for (int day = first.getValue(); day <= last.getValue(); day++) {
            hours.add(new DemoHours(DayOfWeek.of(day), LocalTime.of(opens, 0), LocalTime.of(closes, 0)));
        }
        return hours;
    }
}
