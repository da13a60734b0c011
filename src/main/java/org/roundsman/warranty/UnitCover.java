package org.roundsman.warranty;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A unit with its cover.
 *
 * @param today the day for which it holds, in the time zone of the unit's site
 */
public record UnitCover(Unit unit, Cover cover, LocalDate today) {

    public OptionalLong deviceId() {
        return unit.deviceId();
    }

    public OptionalLong purchaseId() {
        return unit.purchase().map(p -> OptionalLong.of(p.id())).orElse(OptionalLong.empty());
    }

    public long customerId() {
        return unit.customerId();
    }

    public OptionalLong siteId() {
        return unit.siteId();
    }

    public String serial() {
        return unit.serial();
    }

    public OptionalLong modelId() {
        return unit.model().map(m -> OptionalLong.of(m.id())).orElse(OptionalLong.empty());
    }

    public CoverStatus status() {
        return cover.status();
    }

    /** The last day that is covered, inclusive; see {@link Cover#lastDay}. */
    public Optional<LocalDate> lastDay() {
        return cover.lastDay();
    }

    public List<CoverStep> derivation() {
        return cover.derivation();
    }

    /** Whether the cover is known to end, today or later. */
    public boolean ends() {
        return lastDay().filter(day -> !day.isBefore(today)).isPresent();
    }

    /** Whether the maker gives no help any more. */
    public boolean pastSupport() {
        return unit.model()
                .flatMap(UnitModel::endOfSupport)
                .filter(day -> day.isBefore(today))
                .isPresent();
    }
}
