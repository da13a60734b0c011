package org.roundsman.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.roundsman.testing.TestDatabase;

class HistoryTableDbTest {

    @Test
    void remembersFinishedDaysOnce() {
        DataSource source = TestDatabase.fresh("demo_history_test");
        HistoryTable table = new HistoryTable(source);
        assertThat(table.finished()).isEmpty();
        table.finish(LocalDate.parse("2026-11-25"));
        table.finish(LocalDate.parse("2026-11-25"));
        table.finish(LocalDate.parse("2026-10-25"));
        assertThat(new HistoryTable(source).finished())
                .containsExactlyInAnyOrder(LocalDate.parse("2026-11-25"), LocalDate.parse("2026-10-25"));
    }
}
