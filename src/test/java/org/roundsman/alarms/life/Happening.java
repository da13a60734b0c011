package org.roundsman.alarms.life;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.Severity;

/**
 * One thing that happens in a random sequence.
 *
 * @param alarm which of a few alarms it happens to
 * @param severity of the raise; null where it is none
 * @param act what a person does; null where it is a signal; both null: a clear
 * @param pause seconds since the one before; below 0 for a signal that comes late
 */
public record Happening(int alarm, Severity severity, AlarmAct.Kind act, int pause) {

    public static Arbitrary<Happening> any(int alarms) {
        Arbitrary<Integer> alarm = Arbitraries.integers().between(0, alarms - 1);
        Arbitrary<Integer> pause = Arbitraries.integers().between(-30, 200);
        Arbitrary<Happening> raise = Combinators.combine(alarm, Arbitraries.of(Severity.class), pause)
                .as((n, severity, wait) -> new Happening(n, severity, null, wait));
        Arbitrary<Happening> clear =
                Combinators.combine(alarm, pause).as((n, wait) -> new Happening(n, null, null, wait));
        Arbitrary<Happening> act = Combinators.combine(
                        alarm, Arbitraries.of(AlarmAct.Kind.class).filter(kind -> kind != AlarmAct.Kind.REOPEN), pause)
                .as((n, kind, wait) -> new Happening(n, null, kind, wait));
        return Arbitraries.oneOf(raise, raise, clear, act);
    }

    public boolean isAct() {
        return act != null;
    }

    public boolean isClear() {
        return act == null && severity == null;
    }
}
