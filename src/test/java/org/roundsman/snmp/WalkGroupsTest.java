package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Tables and scalars are told by the shape of names alone: RFC 2578 sections 7.1.12, 7.7 and 7.10. */
class WalkGroupsTest {

    private static List<UnusedGroup> groups(String... names) {
        StringBuilder text = new StringBuilder();
        for (String name : names) {
            text.append(".1.3.6.1.4.1.32473.").append(name).append(" = INTEGER: 1\n");
        }
        return WalkVisit.groups(WalkText.read(text.toString()).walk());
    }

    @Test
    void scalarsAndATable() {
        List<UnusedGroup> groups = groups("2.1.0", "2.2.0", "5.1.2.1", "5.1.2.2", "5.1.3.1", "5.1.3.2");
        assertThat(groups).extracting(UnusedGroup::oid).containsExactly("1.3.6.1.4.1.32473.2", "1.3.6.1.4.1.32473.5.1");
        assertThat(groups).extracting(UnusedGroup::table).containsExactly(false, true);
        assertThat(groups.get(1).indexes()).containsExactly("1", "2");
        assertThat(groups.get(1).columns())
                .extracting(UnusedGroup.Column::number)
                .containsExactly(2, 3);
    }

    @Test
    void rowsThatComeAndGoWhileTheDeviceIsRead() {
        List<UnusedGroup> groups = groups(
                "5.1.2.1", "5.1.2.2", "5.1.2.3", "5.1.3.2", "5.1.3.3", "5.1.3.4", "5.1.4.2", "5.1.4.3", "5.1.4.5");
        assertThat(groups).singleElement().satisfies(table -> {
            assertThat(table.oid()).isEqualTo("1.3.6.1.4.1.32473.5.1");
            assertThat(table.table()).isTrue();
        });
    }

    @Test
    void twoTablesOfOneShapeStayTwo() {
        List<UnusedGroup> groups = groups(
                "1.1.1.2.7", "1.1.1.2.8", "1.1.1.3.7", "1.1.1.3.8", "1.2.1.2.7", "1.2.1.2.8", "1.2.1.3.7", "1.2.1.3.8");
        assertThat(groups)
                .extracting(UnusedGroup::oid)
                .containsExactly("1.3.6.1.4.1.32473.1.1.1", "1.3.6.1.4.1.32473.1.2.1");
    }

    @Test
    void anIndexOfTwoNumbers() {
        assertThat(groups("4.1.1.1.1.1", "4.1.1.1.1.2", "4.1.1.1.2.1", "4.1.1.2.1.1", "4.1.1.2.1.2", "4.1.1.2.2.1"))
                .singleElement()
                .satisfies(table -> {
                    assertThat(table.oid()).isEqualTo("1.3.6.1.4.1.32473.4.1.1");
                    assertThat(table.indexes()).containsExactly("1.1", "1.2", "2.1");
                });
    }
}
