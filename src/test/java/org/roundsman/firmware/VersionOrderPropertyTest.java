package org.roundsman.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.roundsman.catalogue.FirmwareLine.Scheme;

/** Over what a line can read, comparing is a total order; and whatever it is given, it throws nothing. */
class VersionOrderPropertyTest {

    private static final VersionScheme DOTTED = VersionScheme.of(Scheme.DOTTED, "");
    private static final VersionScheme SEMANTIC = VersionScheme.of(Scheme.SEMANTIC, "");
    private static final VersionScheme PATTERN =
            VersionScheme.of(Scheme.PATTERN, "([a-z0-9]*)(?:[.](\\d+))?([^-]*)(?:-(?<pre>\\w*))?");

    @Provide
    Arbitrary<String> dotted() {
        Arbitrary<String> number = Arbitraries.of("0", "1", "2", "02", "10");
        Arbitrary<String> more = Combinators.combine(
                        Arbitraries.of("", ".", ".", "-", "+", "~", "_"),
                        Arbitraries.of("0", "1", "2", "02", "a", "b", "rc", "beta", "hotfix", "rc1", "B2"))
                .as((sign, content) -> sign + content);
        return Combinators.combine(number, more.list().ofMaxSize(4))
                .as((first, others) -> first + String.join("", others));
    }

    @Provide
    Arbitrary<String> semantic() {
        Arbitrary<String> identifier = Arbitraries.of("0", "1", "2", "10", "alpha", "beta", "rc", "a-1", "-", "1a");
        return Combinators.combine(
                        Arbitraries.integers().between(0, 2),
                        Arbitraries.integers().between(0, 11),
                        identifier.list().ofMaxSize(3),
                        Arbitraries.of("", "+7", "+b.1"))
                .as((major, minor, more, build) ->
                        major + "." + minor + ".0" + (more.isEmpty() ? "" : "-" + String.join(".", more)) + build);
    }

    @Property(tries = 3_000)
    void dottedNumbersHaveATotalOrder(
            @ForAll("dotted") String a, @ForAll("dotted") String b, @ForAll("dotted") String c) {
        assertThat(DOTTED.read(a)).isInstanceOf(Version.Read.class);
        ordered(DOTTED, a, b, c);
    }

    @Property(tries = 3_000)
    void semanticVersionsHaveATotalOrder(
            @ForAll("semantic") String a, @ForAll("semantic") String b, @ForAll("semantic") String c) {
        assertThat(SEMANTIC.read(a)).isInstanceOf(Version.Read.class);
        ordered(SEMANTIC, a, b, c);
    }

    @Property(tries = 3_000)
    void aPatternHasATotalOrder(@ForAll("dotted") String a, @ForAll("dotted") String b, @ForAll("dotted") String c) {
        ordered(PATTERN, a, b, c);
    }

    @Property
    void nothingIsThrownWhateverIsRead(@ForAll String a, @ForAll String b) {
        for (VersionScheme scheme : new VersionScheme[] {DOTTED, SEMANTIC, PATTERN}) {
            assertThat(VersionScheme.compare(scheme.read(a), scheme.read(b))).isNotNull();
        }
    }

    private static void ordered(VersionScheme scheme, String first, String second, String third) {
        Version a = scheme.read(first);
        Version b = scheme.read(second);
        Version c = scheme.read(third);
        if (a instanceof Version.Unreadable || b instanceof Version.Unreadable || c instanceof Version.Unreadable) {
            return;
        }
        assertThat(sign(a, a)).isZero();
        assertThat(sign(a, b)).isEqualTo(-sign(b, a));
        if (sign(a, b) <= 0 && sign(b, c) <= 0) {
            assertThat(sign(a, c)).isLessThanOrEqualTo(0);
            assertThat(sign(a, c) == 0).isEqualTo(sign(a, b) == 0 && sign(b, c) == 0);
        }
        boolean alike = ((Version.Read) a).marks().equals(((Version.Read) b).marks());
        assertThat(sign(a, b) == 0).isEqualTo(alike);
        if (alike) {
            assertThat(sign(a, c)).isEqualTo(sign(b, c));
        }
    }

    private static int sign(Version one, Version other) {
        return switch (VersionScheme.compare(one, other).outcome()) {
            case OLDER -> -1;
            case SAME -> 0;
            case NEWER -> 1;
            case CANNOT_BE_COMPARED -> throw new AssertionError(one + " and " + other);
        };
    }
}
