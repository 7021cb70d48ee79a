package org.demebook.leaving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.as;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.zip.ZipFile;
import javax.imageio.ImageIO;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A keeper takes out everything that they wrote or hold. Scenario: take-out. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class MyArchiveTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;

    @Test
    void the_archive_holds_every_word_and_its_digests_agree() throws Exception {
        var story = new LeaverStory(Colony.found());
        story.writeEverything();
        var files = files(story.colony, story.name);

        var all = files.entrySet().stream()
                .filter(file -> !file.getKey().startsWith("photos/"))
                .map(file -> new String(file.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining());
        var importFindings = story.words.subList(story.words.size() - 2, story.words.size());
        assertThat(story.words)
                .filteredOn(word -> !importFindings.contains(word))
                .allMatch(all::contains);
        for (var file : files.keySet()) {
            if (file.endsWith(".json") && !file.equals("incubations.json")) { // the snakes bear live young
                assertThat(JSON.readTree(files.get(file)).isEmpty()).as(file).isFalse();
            }
        }
        var pictures = files.keySet().stream()
                .filter(name -> name.startsWith("photos/"))
                .toList();
        assertThat(pictures).hasSize(2);
        for (var picture : pictures) {
            assertThat(ImageIO.read(folder.resolve(picture).toFile()).getWidth())
                    .isEqualTo(40);
        }
        var listed = new String(files.get("SHA256SUMS"), StandardCharsets.UTF_8)
                .lines()
                .map(line -> line.substring(66))
                .collect(Collectors.toCollection(TreeSet::new));
        var others = new TreeSet<>(files.keySet());
        others.remove("SHA256SUMS");
        assertThat(listed).isEqualTo(others);
        // coreutils' own check, which did not write them
        var check = new ProcessBuilder("sha256sum", "-c", "--strict", "--quiet", "SHA256SUMS")
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        assertThat(new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                .isEmpty();
        assertThat(check.waitFor(10, TimeUnit.SECONDS)).isTrue();
        assertThat(check.exitValue()).isZero();
        others.remove("README.txt"); // which does not tell of itself
        assertThat(new String(files.get("README.txt"), StandardCharsets.UTF_8))
                .contains(others.stream()
                        .filter(name -> !name.startsWith("photos/"))
                        .toList());
    }

    @Test
    void it_shows_of_others_what_they_let_be_seen_and_no_more() throws IOException {
        var colony = Colony.foundPrivate();
        var story = new LeaverStory(colony);
        var secret = new HashMap<>(Colony.animal("female", "2020-06-01"));
        secret.putAll(Map.of("notes", "kept-to-myself", "ownReference", "tub-of-ines", "marks", List.of("white-chin")));
        var hidden = colony.register(INES, secret);
        colony.female(story.name);

        var text = files(colony, story.name).values().stream()
                .map(bytes -> new String(bytes, StandardCharsets.UTF_8))
                .collect(Collectors.joining());
        assertThat(text)
                .contains(story.name)
                .doesNotContain(hidden, "kept-to-myself", "tub-of-ines", "white-chin", DOV + "'s rack");
    }

    @Test
    void its_sheet_can_be_read_into_another_register() throws IOException {
        var story = new LeaverStory(Colony.found());
        story.writeEverything();
        var sheet = files(story.colony, story.name).get("animals.csv");
        var other = Colony.found();
        as(INES).contentType("text/csv")
                .body(sheet)
                .post(other.path("/import-checks"))
                .then()
                .statusCode(200);
    }

    private Map<String, byte[]> files(Colony colony, String keeper) throws IOException {
        var zip = Files.write(
                folder.resolve("archive.zip"),
                as(keeper)
                        .get(colony.path("/my-archive"))
                        .then()
                        .statusCode(200)
                        .contentType("application/zip")
                        .extract()
                        .asByteArray());
        var files = new HashMap<String, byte[]>();
        try (var archive = new ZipFile(new File(zip.toString()))) {
            for (var entry : archive.stream().toList()) {
                var bytes = archive.getInputStream(entry).readAllBytes();
                files.put(entry.getName(), bytes);
                var file = folder.resolve(entry.getName());
                Files.createDirectories(file.getParent());
                Files.write(file, bytes);
            }
        }
        Files.delete(zip);
        return files;
    }
}
