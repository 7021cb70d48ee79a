package org.demebook.handover;

import java.io.IOException;
import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A page read by an XML parser, which forgives nothing. */
final class Xhtml {
    private Xhtml() {}

    static Element parse(String page) {
        try {
            var factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            return factory.newDocumentBuilder()
                    .parse(new InputSource(new StringReader(page)))
                    .getDocumentElement();
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError("not well-formed: " + page, e);
        }
    }
}
