package org.demebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Rules of the schema that let it move to a distributed PostgreSQL-compatible engine unchanged, read off the migrations. */
class SchemaTest {
    /** Tables of the node itself, which belong to no population. */
    private static final Set<String> OF_THE_NODE = Set.of(
            "keeper", "account", "invitation", "kept_answer", "claim_code", "calendar_address", "wall_key", "peer");

    /** Found by what a request brings before its population is known. */
    private static final Set<String> DIRECTORY_INDEXES =
            Set.of("journal_head_code", "membership_keeper", "handover_sheet_code");

    private static final Pattern TABLE = Pattern.compile("create table (\\w+) \\((.*?)\\n\\);", Pattern.DOTALL);
    private static final Pattern PRIMARY_KEY = Pattern.compile("primary key \\((\\w+)");
    private static final Pattern FOREIGN_KEY = Pattern.compile("foreign key \\((\\w+)");
    private static final Pattern INDEX =
            Pattern.compile("create (?:unique )?index (\\w+) on (\\w+) \\(\\s*(?:lower\\()?(\\w+)");

    @Test
    void population_id_leads_every_primary_and_foreign_key_of_a_population() throws IOException {
        var breaches = new ArrayList<String>();
        var tables = TABLE.matcher(migrations());
        int seen = 0;
        while (tables.find()) {
            seen++;
            var name = tables.group(1);
            if (OF_THE_NODE.contains(name)) {
                continue;
            }
            for (var key : List.of(PRIMARY_KEY, FOREIGN_KEY)) {
                var keys = key.matcher(tables.group(2));
                while (keys.find()) {
                    if (!keys.group(1).equals("population_id")) {
                        breaches.add(name + ": " + keys.group());
                    }
                }
            }
            assertThat(PRIMARY_KEY.matcher(tables.group(2)).find())
                    .as(name + " has a primary key")
                    .isTrue();
        }
        assertThat(seen).isGreaterThan(15);
        assertThat(breaches).isEmpty();
    }

    @Test
    void population_id_leads_every_index_of_a_population() throws IOException {
        var breaches = new ArrayList<String>();
        var indexes = INDEX.matcher(migrations());
        while (indexes.find()) {
            if (!OF_THE_NODE.contains(indexes.group(2))
                    && !DIRECTORY_INDEXES.contains(indexes.group(1))
                    && !indexes.group(3).equals("population_id")) {
                breaches.add(indexes.group());
            }
        }
        assertThat(breaches).isEmpty();
    }

    @Test
    void nothing_rests_on_what_only_one_engine_has() throws IOException {
        assertThat(migrations().toLowerCase())
                .doesNotContainPattern("(?m)^ +\\w+ +(big|small)?serial\\b")
                .doesNotContainPattern("create (or replace )?(trigger|function|procedure|rule|sequence)")
                .doesNotContain("generated always as identity", "deferrable", "exclude using", "listen ", "notify ")
                .doesNotContain("advisory", "jsonb");
    }

    private static String migrations() throws IOException {
        var text = new StringBuilder();
        try (var files = Files.list(Path.of("src/main/resources/db/migration"))) {
            for (var file : files.sorted().toList()) {
                text.append(Files.readString(file));
            }
        }
        return text.toString().replaceAll("--[^\n]*", "");
    }
}
