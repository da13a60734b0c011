package planted.web;

import java.sql.Connection;

/** Planted: pages know no SQL. */
public record WithSql(Connection connection) {}
