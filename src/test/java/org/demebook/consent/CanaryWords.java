package org.demebook.consent;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Words that stand nowhere else. Most have a shape by which all that stand in a text are found in one pass; what the server
 * makes up and has none, such as the secret of a link, is looked for by itself.
 */
final class CanaryWords {
    /** Words made here, transponders, studbook numbers, ids, codes to be typed. No two can be read out of one stretch of text. */
    private static final Pattern SHAPE = Pattern.compile(
            "(?:mark|note|loc|region|ref|own|said)q[0-9a-f]{8}x[0-9]+z|98100[0-9]{10}|T[0-9A-Z]{3}-H-[0-9]+-(?:[0-9A-Z*]|%2A)"
                    + "|[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}|[0-9A-HJKMNP-TV-Z]{4}(?:-[0-9A-HJKMNP-TV-Z]{4}){3}");

    private final Random random;
    private final Map<String, Set<String>> readers = new HashMap<>();
    private final List<String> shapeless = new ArrayList<>();

    /** What no line of a log may hold. */
    private final Set<String> unloggable = new TreeSet<>();

    private int made;

    CanaryWords(Random random) {
        this.random = random;
    }

    /** A word of a keeper's free text; whoever reads it is not said yet. */
    String text(String kind) {
        var word = kind + "q" + "%08x".formatted(random.nextInt()) + "x" + made++ + "z";
        unloggable.add(word);
        return word;
    }

    /** A free text that nobody reads but some. */
    String text(String kind, String... readers) {
        return told(text(kind), readers);
    }

    String transponder() {
        var code = "98100%010d".formatted(1_000_000_000L + random.nextInt(900_000_000));
        unloggable.add(code);
        return code;
    }

    /** What the server made up, and who reads it. */
    String told(String word, String... who) {
        readers.put(word, new TreeSet<>(List.of(who)));
        if (!SHAPE.matcher(word).matches()) {
            shapeless.add(word);
            unloggable.add(word);
        }
        return word;
    }

    /** Of the words with named readers those that somebody may not read. */
    Set<String> deniedTo(String asker) {
        var denied = new TreeSet<String>();
        readers.forEach((word, who) -> {
            if (!who.contains(asker)) {
                denied.add(word);
            }
        });
        return denied;
    }

    /** A new round with new words; what was ever written stays out of the log. */
    void forget() {
        readers.clear();
        shapeless.clear();
    }

    /** All words that stand in a text. */
    Set<String> in(String text) {
        var found = new TreeSet<String>();
        var matcher = SHAPE.matcher(text);
        while (matcher.find()) {
            found.add(matcher.group().replace("%2A", "*"));
        }
        shapeless.stream().filter(text::contains).forEach(found::add);
        return found;
    }

    Set<String> unloggable() {
        return unloggable;
    }
}
