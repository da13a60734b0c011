package org.roundsman.claims;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Where a claim stands, and where it can go from there. Pure. */
public enum ClaimState {
    OPENED("opened"),
    /** The broken unit, or the request for a replacement, is with the maker or supplier. */
    SENT("sent"),
    REPLACED("replaced"),
    REFUSED("refused"),
    /** Nothing more will come of it. */
    CLOSED("closed");

    private final String word;

    ClaimState(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** The states that may come next, in the order of their names here; none after the end. */
    public Set<ClaimState> next() {
        return switch (this) {
            case OPENED -> EnumSet.of(SENT, REFUSED, CLOSED);
            case SENT -> EnumSet.of(REPLACED, REFUSED);
            case REPLACED -> EnumSet.of(CLOSED);
            case REFUSED -> EnumSet.of(SENT, CLOSED);
            case CLOSED -> EnumSet.noneOf(ClaimState.class);
        };
    }

    /** Why a claim cannot go there; empty where it can. */
    public Optional<String> against(ClaimState to) {
        if (next().contains(to)) {
            return Optional.empty();
        }
        if (this == to) {
            return Optional.of("the claim is " + word + " already");
        }
        if (this == CLOSED) {
            return Optional.of("the claim is closed; open another one if the unit fails again");
        }
        String possible = next().stream().map(ClaimState::word).collect(Collectors.joining(", or "));
        return Optional.of("a claim that is " + word + " cannot become " + to.word + "; it can become " + possible);
    }

    /** The state of that word. */
    public static Optional<ClaimState> of(String word) {
        return Arrays.stream(values()).filter(state -> state.word.equals(word)).findFirst();
    }
}
