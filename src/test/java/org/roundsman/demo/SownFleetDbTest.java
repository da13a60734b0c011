package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalInt;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.roundsman.testing.TestDatabase;

class SownFleetDbTest {

    private static final OptionalInt ANY_SIZE = OptionalInt.empty();
    private static final OptionalLong ANY_SEED = OptionalLong.empty();

    @Test
    void aSecondStartWithoutWishesRunsTheFleetThatIsThere() {
        SownFleet sown = new SownFleet(TestDatabase.fresh("sown_fleet_again"));
        assertThat(sown.choose(OptionalInt.of(2000), OptionalLong.of(7))).isEqualTo(new SownFleet.Choice(2000, 7));
        assertThat(sown.choose(ANY_SIZE, ANY_SEED)).isEqualTo(new SownFleet.Choice(2000, 7));
        assertThat(sown.choose(OptionalInt.of(2000), ANY_SEED)).isEqualTo(new SownFleet.Choice(2000, 7));
    }

    @Test
    void anotherFleetOnTheSameDataIsRefusedWithTheMend() {
        SownFleet sown = new SownFleet(TestDatabase.fresh("sown_fleet_other"));
        sown.choose(ANY_SIZE, ANY_SEED);
        assertThatThrownBy(() -> sown.choose(OptionalInt.of(300), ANY_SEED))
                .hasMessageContaining("holds the invented fleet of " + DemoFleet.USUAL_SIZE)
                .hasMessageContaining("--fresh");
    }
}
