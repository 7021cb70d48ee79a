package org.demebook.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** What stands in {@code app.css}, read from the file that is delivered, and in the page that explains it. */
final class Stylesheet {
    private static final Path CSS = Path.of("src/main/resources/META-INF/resources/pages/app.css");
    private static final Path PAGE = Path.of("docs/design.md");

    private static final String LIGHT = ":root {";
    private static final String DARK_DEVICE = ":root:not([data-appearance=\"light\"]) {";
    private static final String DARK_CHOSEN = ":root[data-appearance=\"dark\"] {";

    private Stylesheet() {}

    static String css() {
        return read(CSS).replaceAll("(?s)/\\*.*?\\*/", "");
    }

    static String page() {
        return read(PAGE);
    }

    /** Colours by the name of their custom property, without its two dashes. */
    static Map<String, Colour> light() {
        return colours(LIGHT);
    }

    static Map<String, Colour> darkAsTheDeviceHasIt() {
        return colours(DARK_DEVICE);
    }

    static Map<String, Colour> darkAsChosen() {
        return colours(DARK_CHOSEN);
    }

    static Set<String> classes() {
        var names = new TreeSet<String>();
        // selectors only: what stands before a brace, without quoted values of attributes
        var selectors = Pattern.compile("([^{}]+)\\{").matcher(css());
        while (selectors.find()) {
            var name = Pattern.compile("\\.([a-z][a-z0-9-]*)")
                    .matcher(selectors.group(1).replaceAll("@media[^{]*|\"[^\"]*\"", ""));
            while (name.find()) {
                names.add(name.group(1));
            }
        }
        return names;
    }

    private static Map<String, Colour> colours(String selector) {
        var css = css();
        int from = css.indexOf(selector);
        if (from < 0) {
            throw new IllegalStateException("app.css has no block " + selector);
        }
        var colours = new LinkedHashMap<String, Colour>();
        var property = Pattern.compile("--([a-z0-9-]+):\\s*(#[0-9a-fA-F]+)\\s*;")
                .matcher(css.substring(from, css.indexOf('}', from)));
        while (property.find()) {
            colours.put(property.group(1), Colour.of(property.group(2)));
        }
        return colours;
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
