package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The ready choices are what docs/consent.md tells keepers that they are. */
class ReadyGrantsTest {
    @Test
    void each_choice_grants_the_lines_of_the_table_that_keepers_read() throws IOException {
        var told = new ArrayList<String>();
        for (var choice : ReadyChoice.values()) {
            told.addAll(linesOf(choice));
            assertThat(ReadyGrants.of(choice).stream().map(ReadyGrantsTest::words))
                    .as(choice.word())
                    .containsExactlyElementsOf(told);
        }
        assertThat(told).hasSize(6);
    }

    @Test
    void no_choice_lets_anybody_read_what_keepers_do_not_share_readily() {
        var readable = new HashSet<FieldGroup>();
        for (var line : ReadyGrants.of(ReadyChoice.OPEN_PEDIGREE)) {
            if (line.actions().contains(Action.READ) || line.actions().contains(Action.RELAY)) {
                readable.addAll(line.fieldGroups());
            }
        }
        assertThat(readable)
                .isEqualTo(Set.of(
                        FieldGroup.IDENTITY, FieldGroup.PARENTAGE, FieldGroup.GENETICS, FieldGroup.BREEDING_RESULTS));
    }

    private static List<String> linesOf(ReadyChoice choice) throws IOException {
        return Files.readAllLines(Path.of("docs/consent.md")).stream()
                .filter(line -> line.startsWith("| " + choice.word() + " | "))
                .map(line -> line.substring(choice.word().length() + 5, line.length() - 2))
                .filter(line -> !line.replace("|", "").isBlank())
                .toList();
    }

    private static String words(ReadyGrants.Line line) {
        return "%s | %s | %s | %s"
                .formatted(
                        line.recipient().kind().word(),
                        joined(line.fieldGroups()),
                        joined(line.purposes()),
                        joined(line.actions()));
    }

    private static String joined(List<? extends Enum<?>> values) {
        return values.stream().map(Wording::word).collect(Collectors.joining(", "));
    }
}
