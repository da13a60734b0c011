package org.roundsman.web.ahead;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Predicate;
import org.roundsman.claims.ClaimBook;
import org.roundsman.claims.ClaimSearch;
import org.roundsman.claims.Shortage;
import org.roundsman.claims.StoreRooms;
import org.roundsman.firmware.FirmwareState;
import org.roundsman.firmware.FirmwareStates;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.warranty.UnitCover;
import org.roundsman.web.fleet.Flag;
import org.roundsman.web.page.Words;

/** What waits for somebody to decide or to enter something, in a few lines. */
@ApplicationScoped
class Decisions {

    private static final CustomerScope ALL = CustomerScope.everyone();

    private final FirmwareStates firmware;
    private final ClaimBook claims;
    private final StoreRooms rooms;

    Decisions(FirmwareStates firmware, ClaimBook claims, StoreRooms rooms) {
        this.firmware = firmware;
        this.claims = claims;
        this.rooms = rooms;
    }

    /** One matter, with the list behind it. */
    record Line(Flag flag, String link) {}

    List<Line> now(List<UnitCover> units) {
        List<Line> lines = new ArrayList<>();
        firmware(lines);
        warranty(lines, units);
        claims(lines);
        return lines;
    }

    private void firmware(List<Line> lines) {
        List<FirmwareState> states = firmware.all(ALL);
        add(
                lines,
                states,
                FirmwareState::security,
                Flag.Tone.DUE,
                "whose firmware lacks a security fix",
                "/firmware/work");
        add(
                lines,
                states,
                state -> state.status() == FirmwareStatus.WITHDRAWN && !state.security(),
                Flag.Tone.DUE,
                "whose firmware was withdrawn",
                "/firmware/devices?status=withdrawn");
        add(
                lines,
                states,
                state -> state.status() == FirmwareStatus.BEHIND,
                Flag.Tone.SOON,
                "behind the firmware that is to run",
                "/firmware/devices?status=behind");
        add(
                lines,
                states,
                state -> state.status() == FirmwareStatus.NOT_KNOWN,
                Flag.Tone.OPEN,
                "whose firmware cannot be judged",
                "/firmware/devices?status=not-known");
    }

    private static void add(
            List<Line> lines,
            List<FirmwareState> states,
            Predicate<FirmwareState> which,
            Flag.Tone tone,
            String words,
            String link) {
        count(lines, states.stream().filter(which).count(), "device", "devices", new Matter(tone, words, link));
    }

    private record Matter(Flag.Tone tone, String words, String link) {}

    private static void count(List<Line> lines, long count, String one, String more, Matter matter) {
        if (count > 0) {
            Flag flag = new Flag(matter.tone(), Words.many(count, one, more) + " " + matter.words(), "");
            lines.add(new Line(flag, matter.link()));
        }
    }

    private static void warranty(List<Line> lines, List<UnitCover> units) {
        String list = "/warranty/units?status=";
        units(
                lines,
                units,
                unit -> unit.status() == CoverStatus.ENDS_WITHIN_30,
                new Matter(Flag.Tone.SOON, "whose warranty ends within 30 days", list + CoverStatus.ENDS_WITHIN_30));
        units(
                lines,
                units,
                unit -> unit.status() == CoverStatus.ENDED,
                new Matter(Flag.Tone.DUE, "whose warranty has ended", list + CoverStatus.ENDED));
        units(
                lines,
                units,
                UnitCover::pastSupport,
                new Matter(Flag.Tone.DUE, "past the maker’s support", "/warranty/units?support=past"));
        units(
                lines,
                units,
                unit -> unit.status() == CoverStatus.MISSING,
                new Matter(Flag.Tone.OPEN, "whose terms or dates somebody has to enter", list + CoverStatus.MISSING));
    }

    private static void units(List<Line> lines, List<UnitCover> units, Predicate<UnitCover> which, Matter matter) {
        count(lines, units.stream().filter(which).count(), "unit", "units", matter);
    }

    private void claims(List<Line> lines) {
        long open = claims.search(ALL, new ClaimSearch(Optional.empty(), true, OptionalLong.empty(), 1, 1))
                .total();
        count(lines, open, "claim", "claims", new Matter(Flag.Tone.SOON, "not closed", "/claims"));
        rooms.counts(ALL).stream()
                .filter(room -> room.missing() > 0)
                .forEach(room -> lines.add(new Line(shortOf(room), "/spares")));
    }

    private static Flag shortOf(Shortage room) {
        return new Flag(
                Flag.Tone.SOON,
                Words.many(room.missing(), "spare", "spares") + " of " + room.model() + " short in " + room.room(),
                "");
    }
}
