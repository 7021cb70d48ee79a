package org.demebook.plot;

import io.quarkus.qute.Engine;
import io.quarkus.qute.HtmlEscaper;
import io.quarkus.qute.ReflectionValueResolver;
import io.quarkus.qute.TemplateLocator.TemplateLocation;
import io.quarkus.qute.Variant;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A plot drawn by its template, read back by the XML parser of the JDK, which refuses what is not well formed. */
record Drawn(String html, Document page) {
    private static final Engine ENGINE = Engine.builder()
            .addDefaults()
            .addValueResolver(new ReflectionValueResolver())
            .addResultMapper(new HtmlEscaper(List.of("text/html")))
            .addLocator(Drawn::locate)
            .build();

    static Drawn of(Record plot) {
        var name = plot.getClass().getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "-");
        var template = ENGINE.getTemplate("plot/" + name.toLowerCase(java.util.Locale.ROOT));
        return read(template.data("plot", plot).render());
    }

    private static Drawn read(String html) {
        try {
            var builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
            builder.setErrorHandler(null);
            return new Drawn(html, builder.parse(new InputSource(new StringReader(html))));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError(e.getMessage() + "\n" + html, e);
        }
    }

    private static Optional<TemplateLocation> locate(String id) {
        var resource = Drawn.class.getResource("/templates/" + id + ".html");
        if (resource == null) {
            return Optional.empty();
        }
        return Optional.of(new TemplateLocation() {
            @Override
            public Reader read() {
                try (var stream = resource.openStream()) {
                    return new StringReader(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }

            @Override
            public Optional<Variant> getVariant() {
                return Optional.of(Variant.forContentType("text/html"));
            }
        });
    }

    List<Element> elements(String tag) {
        var found = page.getElementsByTagName(tag);
        return IntStream.range(0, found.getLength())
                .mapToObj(i -> (Element) found.item(i))
                .toList();
    }
}
