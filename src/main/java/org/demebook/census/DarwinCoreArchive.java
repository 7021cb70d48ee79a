package org.demebook.census;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.demebook.census.CountReleaseView.Cell;
import org.jspecify.annotations.Nullable;

/**
 * A release as a Darwin Core archive: one occurrence for each sex and age class, without any place, or one for each region; all
 * marked as captive.
 *
 * <p>A count that is withheld is an interval, with the reason. Totals and decades of birth are left out, since an archive's
 * records are added up by those who use it; so are classes in which there is nothing. For the same reason regions have an
 * archive of their own. A region is a name of the association's: a higher geography, and no locality.
 *
 * <p>Source: Darwin Core text guide, https://dwc.tdwg.org/text/ (from memory); terms, https://dwc.tdwg.org/terms/.
 */
final class DarwinCoreArchive {
    private static final String TERMS = "http://rs.tdwg.org/dwc/terms/";
    private static final String CORE = "occurrence.csv";
    private static final String GENERALIZED =
            "all animals of a sex and age class of the captive population together; no place";

    private static final String GENERALIZED_TO_REGIONS =
            "all animals of a region of the captive population together; no nearer place";

    private final CountReleaseView release;
    private final boolean byRegion;

    private DarwinCoreArchive(CountReleaseView release, boolean byRegion) {
        this.release = release;
        this.byRegion = byRegion;
    }

    /** The bytes of the archive of sexes and age classes; the same for the same release. */
    static byte[] of(CountReleaseView release) {
        return new DarwinCoreArchive(release, false).bytes();
    }

    /** The same of regions, of a release that has a table of them. */
    static byte[] byRegion(CountReleaseView release) {
        return new DarwinCoreArchive(release, true).bytes();
    }

    private byte[] bytes() {
        var bytes = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            put(zip, "meta.xml", descriptor());
            put(zip, "eml.xml", new DatasetDescription(release, byRegion).xml());
            put(zip, CORE, core());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return bytes.toByteArray();
    }

    private void put(ZipOutputStream zip, String name, String text) throws IOException {
        var entry = new ZipEntry(name);
        entry.setTimeLocal(LocalDateTime.ofInstant(release.releasedAt(), ZoneOffset.UTC));
        zip.putNextEntry(entry);
        zip.write(text.getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }

    // ── the records ──────────────────────────────────────────────────────────────────────────────────────────────────

    private String core() throws IOException {
        var text = new StringBuilder();
        try (var csv = new CSVPrinter(text, CSVFormat.RFC4180)) {
            csv.printRecord(
                    record(new Cell("", "", "", "", 1, null, null, null)).keySet());
            for (var cell : finest()) {
                if (cell.count() == null || cell.count() > 0) {
                    csv.printRecord(record(cell).values());
                }
            }
        }
        return text.toString();
    }

    /** The cells that add up to everything: regions, or sexes by age classes, or sexes, or the one count that there is. */
    private List<Cell> finest() {
        if (byRegion) {
            return release.cells().stream()
                    .filter(cell -> Heading.of(cell).isRegion())
                    .toList();
        }
        var inner = release.cells().stream()
                .filter(cell -> Heading.of(cell).isInner())
                .toList();
        if (!inner.isEmpty()) {
            return inner;
        }
        var sexes = release.cells().stream()
                .filter(cell -> !cell.sex().equals(Heading.ALL))
                .toList();
        return sexes.isEmpty()
                ? release.cells().stream()
                        .filter(cell -> Heading.of(cell).equals(Heading.EVERYTHING))
                        .toList()
                : sexes;
    }

    /** A record, term by term, in the order of the columns. */
    private Map<String, @Nullable Object> record(Cell cell) {
        var record = new LinkedHashMap<String, @Nullable Object>();
        record.put("occurrenceID", occurrenceId(cell));
        record.put("datasetName", DatasetDescription.title(release));
        record.put("basisOfRecord", "LivingSpecimen");
        record.put("occurrenceStatus", isThere(cell) ? "present" : null);
        record.put("scientificName", release.taxon());
        record.put("degreeOfEstablishment", "captive");
        record.put("eventDate", release.countedOn());
        if (byRegion) {
            record.put("higherGeography", known(Heading.of(cell).region()));
        } else {
            record.put("sex", known(cell.sex()));
            record.put("lifeStage", known(cell.age()));
        }
        record.put("individualCount", cell.count());
        record.put("organismQuantity", quantity(cell));
        record.put("organismQuantityType", cell.count() != null ? "individuals" : "individuals (interval)");
        record.put("informationWithheld", cell.informationWithheld());
        record.put("dataGeneralizations", byRegion ? GENERALIZED_TO_REGIONS : GENERALIZED);
        return record;
    }

    private String occurrenceId(Cell cell) {
        var release = this.release.population() + ":" + this.release.countedOn();
        return byRegion
                ? release + ":region:" + Heading.of(cell).region()
                : release + ":" + cell.sex() + ":" + cell.age();
    }

    private static boolean isThere(Cell cell) {
        return cell.count() != null || cell.lowest() != null && cell.lowest() > 0;
    }

    private static @Nullable String known(String word) {
        return Set.of(Heading.ALL, Heading.UNKNOWN, Heading.NOT_STATED).contains(word) ? null : word;
    }

    private static @Nullable String quantity(Cell cell) {
        if (cell.count() != null) {
            return cell.count().toString();
        }
        int lowest = Objects.requireNonNullElse(cell.lowest(), 0);
        return cell.highest() == null ? lowest + " or more" : lowest + "-" + cell.highest();
    }

    // ── the descriptor ───────────────────────────────────────────────────────────────────────────────────────────────

    private String descriptor() throws XMLStreamException {
        var text = new StringWriter();
        var xml = XMLOutputFactory.newInstance().createXMLStreamWriter(text);
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeStartElement("archive");
        xml.writeDefaultNamespace("http://rs.tdwg.org/dwc/text/");
        xml.writeAttribute("metadata", "eml.xml");
        xml.writeStartElement("core");
        xml.writeAttribute("encoding", "UTF-8");
        xml.writeAttribute("fieldsTerminatedBy", ",");
        xml.writeAttribute("linesTerminatedBy", "\\r\\n");
        xml.writeAttribute("fieldsEnclosedBy", "\"");
        xml.writeAttribute("ignoreHeaderLines", "1");
        xml.writeAttribute("rowType", TERMS + "Occurrence");
        xml.writeStartElement("files");
        xml.writeStartElement("location");
        xml.writeCharacters(CORE);
        xml.writeEndElement();
        xml.writeEndElement();
        fields(xml);
        xml.writeEndElement();
        xml.writeEndElement();
        xml.writeEndDocument();
        return text.toString();
    }

    private void fields(XMLStreamWriter xml) throws XMLStreamException {
        xml.writeEmptyElement("id");
        xml.writeAttribute("index", "0");
        int index = 0;
        for (var term : record(release.cells().get(0)).keySet()) {
            xml.writeEmptyElement("field");
            xml.writeAttribute("index", Integer.toString(index++));
            xml.writeAttribute("term", TERMS + term);
        }
    }
}
