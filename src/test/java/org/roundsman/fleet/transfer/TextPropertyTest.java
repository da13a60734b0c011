package org.roundsman.fleet.transfer;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;
import org.roundsman.fleet.SiteContact;

/** Whatever is written is read back, character by character. */
class TextPropertyTest {

    @Property
    void anyTextComesBack(@ForAll @Size(min = 1, max = 6) List<@From("fields") String> fields)
            throws IOException, Unreadable {
        String text = CsvTextTest.print(fields);
        assertThat(CsvText.records(text, ',')).containsExactly(fields);
    }

    /** The signs that mean something to CSV, to spreadsheet programs, or to us, more often than chance would. */
    @Provide
    Arbitrary<String> fields() {
        Arbitrary<String> signs = Arbitraries.strings()
                .withChars(',', ';', '"', '\'', '=', '+', '-', '@', '\t', '\r', '\n', ' ', 'a', '\u00fc', '\\', '|')
                .ofMaxLength(12);
        return Arbitraries.oneOf(signs, Arbitraries.strings().ofMaxLength(30));
    }

    @Property
    void theGuardIsTakenOffExactly(@ForAll String text) {
        assertThat(Guard.off(Guard.on(text))).isEqualTo(text);
        assertThat(Guard.on(text)).doesNotMatch("(?s)^[=+\\-@\\t\\x00].*");
    }

    @Property
    void contactsComeBack(@ForAll @Size(max = 4) List<@From("contacts") SiteContact> contacts) {
        List<SiteContact> sorted = new ArrayList<>(contacts);
        sorted.sort(ContactLines.ORDER);
        assertThat(ContactLines.read(ContactLines.write(contacts))).isEqualTo(sorted);
    }

    @Provide
    Arbitrary<SiteContact> contacts() {
        Arbitrary<String> part = Arbitraries.strings()
                .withChars('|', '\\', '\n', 'n', 'a', '+', '1', ' ')
                .ofMaxLength(8)
                .map(String::strip);
        Arbitrary<String> name = part.map(text -> "x" + text);
        return Combinators.combine(name, part, part, part).as(SiteContact::new);
    }

    @Example
    void aContactReadsAsAPersonWritesIt() {
        assertThat(ContactLines.read("Reception | front desk | +1-555-0142 | desk@pebblegate.example\nJanitor"))
                .containsExactly(
                        new SiteContact("Janitor", "", "", ""),
                        new SiteContact("Reception", "front desk", "+1-555-0142", "desk@pebblegate.example"));
    }
}
