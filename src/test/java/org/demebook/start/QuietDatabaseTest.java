package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** What the database refuses gets into the log as its driver tells it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class QuietDatabaseTest {
    @Inject
    DataSource database;

    // PostgreSQL puts the values of a row that breaks a constraint into the detail of its error (manual, 20.8,
    // log_error_verbosity;
    // logServerErrorDetail of its JDBC driver leaves them out)
    @Test
    void a_row_that_is_refused_is_told_without_its_values() throws SQLException {
        try (var connection = database.getConnection();
                var statement = connection.createStatement()) {
            statement.execute("create temporary table chip (code text constraint one_chip primary key)");
            statement.execute("insert into chip values ('981000000000123')");
            var refused = catchThrowable(() -> statement.execute("insert into chip select code from chip"));
            statement.execute("drop table chip");
            assertThat(refused)
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining("one_chip")
                    .message()
                    .doesNotContain("981000000000123");
        }
    }
}
