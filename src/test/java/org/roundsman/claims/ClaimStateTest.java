package org.roundsman.claims;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/**
 * The states of a claim, against the sentence they were ordered with: opened, then sent, then replaced or refused, then closed;
 * an opened one may be refused or closed at once, and a refused one sent again.
 */
class ClaimStateTest {

    private static final Map<String, Set<String>> ORDERED = Map.of(
            "opened", Set.of("sent", "refused", "closed"),
            "sent", Set.of("replaced", "refused"),
            "replaced", Set.of("closed"),
            "refused", Set.of("sent", "closed"),
            "closed", Set.of());

    @Test
    void eachStateLeadsWhereItWasOrderedTo() {
        for (ClaimState from : ClaimState.values()) {
            Set<String> found = new HashSet<>();
            from.next().forEach(to -> found.add(to.word()));
            assertThat(found).as(from.word()).isEqualTo(ORDERED.get(from.word()));
        }
    }

    @Test
    void anIllegalMoveIsRefusedInWordsThatSayWhatIsPossible() {
        assertThat(ClaimState.SENT.against(ClaimState.CLOSED))
                .hasValue("a claim that is sent cannot become closed; it can become replaced, or refused");
        assertThat(ClaimState.SENT.against(ClaimState.SENT)).hasValue("the claim is sent already");
        assertThat(ClaimState.CLOSED.against(ClaimState.SENT).orElseThrow()).contains("closed");
    }

    /** Whatever is tried in whatever order, a claim goes only where the model lets it, and a closed one stays closed. */
    @Property(tries = 500)
    void randomWishesNeverLeadAstray(@ForAll @Size(max = 40) List<ClaimState> wishes) {
        ClaimState state = ClaimState.OPENED;
        String model = "opened";
        for (ClaimState wish : wishes) {
            boolean allowed = ORDERED.get(model).contains(wish.word());
            assertThat(state.against(wish).isEmpty()).isEqualTo(allowed);
            if (allowed) {
                state = wish;
                model = wish.word();
            }
            assertThat(state.word()).isEqualTo(model);
        }
    }
}
