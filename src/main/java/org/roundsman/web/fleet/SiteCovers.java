package org.roundsman.web.fleet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.warranty.UnitCover;

/** The warranty of a whole site in at most three flags. */
final class SiteCovers {

    private SiteCovers() {}

    /** What asks for most first; those that end within half a year together, with the first of their days. */
    static List<Flag> flags(List<UnitCover> covers) {
        List<Flag> flags = new ArrayList<>();
        int all = covers.size();
        int well = count(covers, CoverStatus.COVERED);
        int ended = count(covers, CoverStatus.ENDED);
        int missing = count(covers, CoverStatus.MISSING);
        int soon = all - well - ended - missing;
        if (all > 0 && well == all) {
            flags.add(new Flag(Flag.Tone.WELL, Flag.some(well, all) + "covered", ""));
        }
        if (ended > 0) {
            flags.add(new Flag(Flag.Tone.DUE, Flag.some(ended, all) + "ended", ""));
        }
        if (soon > 0) {
            String verb = soon == 1 ? "ends" : "end";
            flags.add(new Flag(Flag.Tone.SOON, Flag.some(soon, all) + verb + " within 180 days", first(covers)));
        }
        if (missing > 0) {
            flags.add(new Flag(Flag.Tone.OPEN, Flag.some(missing, all) + CoverStatus.MISSING.word(), ""));
        }
        return flags;
    }

    private static int count(List<UnitCover> covers, CoverStatus status) {
        return (int) covers.stream().filter(cover -> cover.status() == status).count();
    }

    private static String first(List<UnitCover> covers) {
        return covers.stream()
                .filter(UnitCover::ends)
                .map(cover -> cover.lastDay().orElseThrow())
                .min(LocalDate::compareTo)
                .map(day -> "the first on " + day)
                .orElse("");
    }
}
