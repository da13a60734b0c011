package org.roundsman.warranty;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.roundsman.catalogue.WarrantyTerms.From;

/** The chain of covers against a plain walk from day to day. */
class CoverChainTest {

    private static final LocalDate DAY_0 = LocalDate.parse("2024-01-31");

    @Property(tries = 2000)
    void theEndIsWhereAWalkFromDayToDayStops(
            @ForAll @IntRange(min = 1, max = 6) int months,
            @ForAll @Size(max = 4) List<@IntRange(min = 0, max = 250) Integer> starts,
            @ForAll @IntRange(min = 0, max = 60) int length,
            @ForAll @IntRange(min = 0, max = 300) int now) {
        List<Contract> contracts = new ArrayList<>();
        for (int start : starts) {
            LocalDate from = DAY_0.plusDays(start);
            contracts.add(Invented.contract(
                    "C-" + start, from.toString(), from.plusDays(length).toString()));
        }
        LocalDate today = DAY_0.plusDays(now);
        Unit unit = Invented.bought(DAY_0.toString(), Invented.months(months, From.PURCHASE));
        Cover cover = CoverRules.of(unit, contracts, today);
        LocalDate terms = DAY_0.plusMonths(months);
        if (!covered(today, terms, contracts)) {
            assertThat(cover.status()).isEqualTo(CoverStatus.ENDED);
            assertThat(cover.lastDay().orElseThrow()).isBefore(today);
            assertThat(covered(cover.lastDay().orElseThrow(), terms, contracts)).isTrue();
            return;
        }
        LocalDate walk = today;
        while (covered(walk.plusDays(1), terms, contracts)) {
            walk = walk.plusDays(1);
        }
        assertThat(cover.lastDay()).contains(walk);
        assertThat(cover.status()).isEqualTo(CoverStatus.of(walk, today));
    }

    private static boolean covered(LocalDate day, LocalDate terms, List<Contract> contracts) {
        return !day.isAfter(terms) || contracts.stream().anyMatch(one -> one.holds(day));
    }
}
