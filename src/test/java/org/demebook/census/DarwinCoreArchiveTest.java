package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.demebook.census.CountReleaseView.Cell;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/** Held against the terms of the Darwin Core occurrence core; where the list comes from stands beside it. */
class DarwinCoreArchiveTest {
    private static final Path TERMS = Path.of("src/test/resources/darwin-core/occurrence-core-terms.txt");
    private static final String DARWIN_CORE = "http://rs.tdwg.org/dwc/terms/";

    private Map<String, String> files = unpack(DarwinCoreArchive.of(release()));

    @Test
    void the_descriptor_names_terms_of_the_occurrence_core_only_and_each_once() throws IOException {
        assertThat(terms()).isNotEmpty().doesNotHaveDuplicates().isSubsetOf(Files.readAllLines(TERMS));
    }

    @Test
    void the_descriptor_describes_the_file_that_is_there() {
        var core = element(xml("meta.xml"), "core");
        assertThat(core.getAttribute("rowType")).isEqualTo(DARWIN_CORE + "Occurrence");
        assertThat(core.getAttribute("ignoreHeaderLines")).isEqualTo("1");
        assertThat(files)
                .containsKeys(element(core.getOwnerDocument(), "location").getTextContent(), "eml.xml");
        assertThat(element(core.getOwnerDocument(), "archive").getAttribute("metadata"))
                .isEqualTo("eml.xml");
        assertThat(files.get("occurrence.csv").split("\r\n")[0].split(","))
                .containsExactly(terms().stream()
                        .map(term -> term.substring(DARWIN_CORE.length()))
                        .toArray(String[]::new));
    }

    @Test
    void every_record_is_of_captive_living_animals_and_says_so() {
        assertThat(records()).allSatisfy(record -> {
            assertThat(record.get("basisOfRecord")).isEqualTo("LivingSpecimen");
            assertThat(record.get("degreeOfEstablishment")).isEqualTo("captive");
            assertThat(record.get("eventDate")).isEqualTo("2025-06-01");
            assertThat(record.get("dataGeneralizations")).isNotEmpty();
            assertThat(record.get("organismQuantity").isEmpty())
                    .isEqualTo(record.get("organismQuantityType").isEmpty());
        });
        assertThat(records().stream().map(record -> record.get("occurrenceID"))).doesNotHaveDuplicates();
    }

    @Test
    void a_count_that_is_withheld_is_an_interval_with_the_reason() {
        var told = record("female", "adult");
        assertThat(told.get("individualCount")).isEqualTo("12");
        assertThat(told.get("organismQuantity")).isEqualTo("12");
        assertThat(told.get("informationWithheld")).isEmpty();

        var withheld = record("male", "adult");
        assertThat(withheld.get("individualCount")).isEmpty();
        assertThat(withheld.get("organismQuantity")).isEqualTo("1-19");
        assertThat(withheld.get("organismQuantityType")).isEqualTo("individuals (interval)");
        assertThat(withheld.get("informationWithheld")).startsWith("count withheld");
        assertThat(withheld.get("occurrenceStatus")).isEqualTo("present");

        var open = record("male", "young");
        assertThat(open.get("organismQuantity")).isEqualTo("0 or more");
        assertThat(open.get("occurrenceStatus")).isEmpty();
    }

    @Test
    void totals_empty_classes_and_places_are_left_out() {
        assertThat(records()).hasSize(3);
        assertThat(terms())
                .noneMatch(
                        term -> term.matches(
                                ".*/(decimal|verbatim|footprint|geo|country|state|locality|location|island|higherGeography).*"));
    }

    @Test
    void regions_are_an_archive_of_their_own_so_that_nobody_adds_them_to_the_others() throws IOException {
        files = unpack(DarwinCoreArchive.byRegion(release()));
        the_descriptor_names_terms_of_the_occurrence_core_only_and_each_once();
        the_descriptor_describes_the_file_that_is_there();
        every_record_is_of_captive_living_animals_and_says_so();
        assertThat(records())
                .extracting(record -> record.get("higherGeography"), record -> record.get("organismQuantity"))
                .containsExactly(tuple("North", "12"), tuple("Middle", "0-20"), tuple("", "7"));
        assertThat(terms())
                .noneMatch(
                        term -> term.matches(".*/(decimal|verbatim|footprint|geo|country|locality|location|island).*"));
    }

    @Test
    void the_data_set_says_who_counted_what_and_how() {
        var eml = xml("eml.xml");
        assertThat(eml.getDocumentElement().getNamespaceURI()).isEqualTo("https://eml.ecoinformatics.org/eml-2.2.0");
        assertThat(element(eml, "title").getTextContent())
                .isEqualTo("Captive animals of Marrowfin Cay & Tern counted on 2025-06-01");
        assertThat(element(eml, "methods").getTextContent()).contains("how it was done");
        assertThat(element(eml, "taxonRankValue").getTextContent()).isEqualTo("insular dwarf Boa");
    }

    @Test
    void the_same_release_gives_the_same_bytes() {
        assertThat(DarwinCoreArchive.of(release())).isEqualTo(DarwinCoreArchive.of(release()));
    }

    // ── helpers ──────────────────────────────────────────────────────────────────────────────────────────────────────

    private static CountReleaseView release() {
        var cells = List.of(
                new Cell("female", "adult", "all", null, 12, null, null, null),
                new Cell("female", "young", "all", null, 0, null, null, null),
                new Cell("male", "adult", "all", null, null, 1, 19, Preparation.WITHHELD),
                new Cell("male", "young", "all", null, null, 0, null, Preparation.WITHHELD),
                new Cell("female", "all", "all", null, 12, null, null, null),
                new Cell("all", "all", "2010s", null, 31, null, null, null),
                new Cell("all", "all", "all", "North", 12, null, null, null),
                new Cell("all", "all", "all", "Middle", null, 0, 20, Preparation.WITHHELD),
                new Cell("all", "all", "all", "South", 0, null, null, null),
                new Cell("all", "all", "all", "not stated", 7, null, null, null));
        return new CountReleaseView(
                "MC",
                "Marrowfin Cay & Tern",
                "insular dwarf Boa",
                LocalDate.of(2025, 6, 1),
                Instant.parse("2025-06-02T08:00:00Z"),
                "6 to 10",
                cells,
                null,
                null,
                "how it was done");
    }

    static Map<String, String> unpack(byte[] archive) {
        var files = new LinkedHashMap<String, String>();
        try (var zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                files.put(entry.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return files;
    }

    private List<String> terms() {
        var fields = xml("meta.xml").getElementsByTagNameNS("*", "field");
        var terms = new ArrayList<String>();
        for (int i = 0; i < fields.getLength(); i++) {
            var field = (Element) fields.item(i);
            assertThat(field.getAttribute("index")).isEqualTo(Integer.toString(i));
            terms.add(field.getAttribute("term"));
        }
        return terms;
    }

    private CSVRecord record(String sex, String lifeStage) {
        return records().stream()
                .filter(record ->
                        record.get("sex").equals(sex) && record.get("lifeStage").equals(lifeStage))
                .findFirst()
                .orElseThrow();
    }

    private List<CSVRecord> records() {
        try {
            return CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(new StringReader(files.get("occurrence.csv")))
                    .getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Document xml(String file) {
        try {
            var factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(files.get(file))));
        } catch (Exception e) {
            throw new AssertionError(file + " is not well-formed", e);
        }
    }

    private static Element element(Document xml, String name) {
        return (Element) xml.getElementsByTagNameNS("*", name).item(0);
    }
}
