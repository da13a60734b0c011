package org.roundsman.web.api;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StrictJsonTest {

    private static SiteJson.Entry read(String json) {
        return StrictJson.as(StrictJson.tree(json.getBytes(UTF_8)), SiteJson.Entry.class);
    }

    private static Problem problem(String json) {
        return catchThrowableOfType(ProblemException.class, () -> read(json)).problem();
    }

    @Test
    void whatFitsIsRead() {
        SiteJson.Entry entry =
                read("{\"name\":\"Pier\",\"uplinkUpKbit\":null,\"hours\":[{\"weekday\":1,\"opens\":\"08:30\"}]}");
        assertThat(entry.name()).isEqualTo("Pier");
        assertThat(entry.hours().get(0).opens()).hasToString("08:30");
    }

    /** RFC 8259: none of these is a JSON text, or (twice the same name) software does not agree what it means. */
    @ParameterizedTest
    @ValueSource(
            strings = {"{\"name\":", "{name:1}", "{} {}", "{\"name\":\"a\",\"name\":\"b\"}", "[1,]", "NaN", "{'a':1}"})
    void whatIsNoJsonIsRefusedWithThePlace(String json) {
        Problem problem = problem(json);
        assertThat(problem.status()).isEqualTo(400);
        assertThat(problem.detail()).contains("line 1, column ").doesNotContain("com.fasterxml");
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "1", "\"text\"", "null", "true"})
    void whatIsNoObjectIsRefused(String json) {
        assertThat(problem(json).detail()).isEqualTo("The body must be a JSON object.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '§',
            value = {
                "{\"role\":\"OWNER\"} | role | there is no such field",
                "{\"contacts\":[{\"name\":\"Ida\"},{\"admin\":true}]} | contacts[1].admin | there is no such field",
                "{\"uplinkUpKbit\":\"fast\"} | uplinkUpKbit | holds another type of value than it should",
                "{\"uplinkUpKbit\":\"10\"} | uplinkUpKbit | holds another type of value than it should",
                "{\"uplinkUpKbit\":1.5} | uplinkUpKbit | “1.5” is not a whole number in range",
                "{\"uplinkUpKbit\":99999999999} | uplinkUpKbit | holds another type of value than it should",
                "{\"hours\":\"always\"} | hours | holds another type of value than it should",
                "{\"hours\":[{\"opens\":\"dawn\"}]} | hours[0].opens | “dawn” is not a time of day such as 08:30"
            })
    void aFieldThatDoesNotFitIsNamed(String json, String field, String reason) {
        Problem problem = problem(json);
        assertThat(problem.status()).isEqualTo(422);
        assertThat(problem.errors()).isEqualTo(List.of(new Problem.FieldError(field, reason)));
    }
}
