package org.demebook.census;

import java.io.StringWriter;
import java.time.ZoneOffset;
import java.util.Objects;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * What a release is, in Ecological Metadata Language 2.2: who counted, when, and that disclosure control was applied, by which
 * kinds of rule. The order of the elements is that of the schema (from memory).
 */
final class DatasetDescription {
    private final CountReleaseView release;
    private final boolean byRegion;

    DatasetDescription(CountReleaseView release, boolean byRegion) {
        this.release = release;
        this.byRegion = byRegion;
    }

    static String title(CountReleaseView release) {
        return "Captive animals of %s counted on %s".formatted(name(release), release.countedOn());
    }

    private static String name(CountReleaseView release) {
        return Objects.requireNonNullElse(release.name(), release.population());
    }

    String xml() throws XMLStreamException {
        var text = new StringWriter();
        var xml = XMLOutputFactory.newInstance().createXMLStreamWriter(text);
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeStartElement("eml", "eml", "https://eml.ecoinformatics.org/eml-2.2.0");
        xml.writeNamespace("eml", "https://eml.ecoinformatics.org/eml-2.2.0");
        xml.writeAttribute(
                "packageId",
                "%s:%s%s".formatted(release.population(), release.countedOn(), byRegion ? ":regions" : ""));
        xml.writeAttribute("system", "demebook");
        xml.writeStartElement("dataset");
        write(xml, title(release), "title");
        write(xml, name(release), "creator", "organizationName");
        write(xml, release.releasedAt().atOffset(ZoneOffset.UTC).toLocalDate().toString(), "pubDate");
        write(xml, "en", "language");
        write(
                xml,
                "Counts of living animals in human care. Keepers who contribute: %s.".formatted(release.keepers()),
                "abstract",
                "para");
        coverage(xml);
        write(xml, name(release), "contact", "organizationName");
        write(xml, release.method(), "methods", "methodStep", "description", "para");
        xml.writeEndElement();
        xml.writeEndElement();
        xml.writeEndDocument();
        return text.toString();
    }

    private void coverage(XMLStreamWriter xml) throws XMLStreamException {
        xml.writeStartElement("coverage");
        write(xml, release.countedOn().toString(), "temporalCoverage", "singleDateTime", "calendarDate");
        if (release.taxon() != null) {
            write(xml, release.taxon(), "taxonomicCoverage", "taxonomicClassification", "taxonRankValue");
        }
        xml.writeEndElement();
    }

    /** A text within elements within each other. */
    private static void write(XMLStreamWriter xml, String text, String... path) throws XMLStreamException {
        for (var element : path) {
            xml.writeStartElement(element);
        }
        xml.writeCharacters(text);
        for (int i = 0; i < path.length; i++) {
            xml.writeEndElement();
        }
    }
}
