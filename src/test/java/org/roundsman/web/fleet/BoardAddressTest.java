package org.roundsman.web.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.ws.rs.core.MultivaluedHashMap;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.measure.Condition;
import org.roundsman.readings.BoardQuery;

class BoardAddressTest {

    private static BoardAddress read(String text) {
        MultivaluedHashMap<String, String> parameters = new MultivaluedHashMap<>();
        for (String part : text.split("&")) {
            String[] pair = part.split("=", 2);
            if (pair.length == 2) {
                parameters.add(pair[0], URLDecoder.decode(pair[1], StandardCharsets.UTF_8));
            }
        }
        return BoardAddress.of(parameters);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "list=access-points&search=pier+3&customer=4&condition=silent&condition=refusing&sort=clients&order=down&page=3",
                "list=gateways&site=12",
                "search=%26%3D%3F+%C3%BC"
            })
    void anAddressIsReadAndWrittenWithoutLoss(String text) {
        assertThat(read(text).text()).isEqualTo(text);
    }

    @Test
    void theListDecidesTheKind() {
        assertThat(read("list=switches").query().kind()).contains(org.roundsman.fleet.DeviceKind.NETWORK_SWITCH);
        assertThat(read("").query().kind()).isEmpty();
    }

    @Test
    void whatCannotBeReadFallsBack() {
        BoardAddress address = read("list=x&sort=1&condition=fine&condition=silent&customer=abc&page=0&order=up");
        assertThat(address.query().sort()).isEqualTo(BoardQuery.Sort.TROUBLE);
        assertThat(address.query().conditions()).containsExactly(Condition.SILENT);
        assertThat(address.text()).isEqualTo("condition=silent");
    }

    @Test
    void anotherListBeginsAtItsFirstPage() {
        assertThat(read("search=a&page=4").in(Tab.GATEWAYS).link()).isEqualTo("/?list=gateways&search=a");
        assertThat(read("search=a&page=4").onPage(5).link()).isEqualTo("/?search=a&page=5");
    }

    @Test
    void aPageBeyondEveryEndStaysBeyondIt() {
        assertThat(read("page=2000000").query().page()).isEqualTo(1_000_000);
    }

    @Test
    void anEndlessSearchIsCut() {
        assertThat(read("search=" + "a".repeat(5000)).query().search()).hasSize(200);
    }
}
