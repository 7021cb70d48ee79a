package org.demebook.crossing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.notation.StudbookNumber;
import org.demebook.notation.Transponder;
import org.demebook.protocol.AnimalId;
import org.demebook.registry.LocalityClaim;
import org.demebook.signing.CanonicalJson;
import org.demebook.transfer.Kind;
import org.jspecify.annotations.Nullable;

/**
 * What the receiver of an animal is handed with the offer (docs/federation/hand-over.md, "The record"). In JSON what is unknown, or not
 * told, is left out.
 *
 * @param addressee sign-in name on the receiving node
 * @param giver sign-in name of the giver, if they say so
 * @param note to the offer; {@code notes} are the record's
 * @param forebears the animal itself first, without its number; then those of its ancestors that may be told of
 */
record HandedRecord(
        String addressee,
        @Nullable String giver,
        Kind kind,
        @Nullable LocalDate handedOverOn,
        @Nullable String note,
        StudbookNumber number,
        Sex sex,
        @Nullable RoughDate born,
        Origin origin,
        @Nullable SourceCode sourceCode,
        boolean malformed,
        @Nullable LocalityClaim locality,
        List<String> transponders,
        List<String> marks,
        @Nullable String notes,
        List<Forebear> forebears) {
    static final int MOST_FOREBEARS = 80;
    private static final int MOST_BYTES = 60 * 1024;
    private static final int LONGEST = 200;
    private static final int LONGEST_NOTE = 500;
    private static final int LONGEST_NOTES = 2000;
    private static final int MOST_IDENTIFIERS = 20;
    private static final int MOST_SIRES = 20;
    private static final int FIRST_YEAR = 1800;
    private static final int LAST_YEAR = 2200;
    private static final int WHOLE = 1_000_000;

    /**
     * @param number null: not told
     * @param born year
     * @param founder whether it was taken from the wild
     */
    record Forebear(
            AnimalId animal,
            @Nullable StudbookNumber number,
            @Nullable Sex sex,
            @Nullable Integer born,
            @Nullable AnimalId dam,
            List<SireShare> sires,
            boolean founder) {}

    /** @param share in millionths, 1 to 1 000 000 */
    record SireShare(AnimalId sire, int share) {}

    // ── written ──────────────────────────────────────────────────────────────────────────────────────────────────────

    ObjectNode json() {
        var json = JsonNodeFactory.instance.objectNode();
        json.put("addressee", addressee);
        put(json, "giver", giver);
        json.put("kind", kind.word());
        put(json, "handedOverOn", handedOverOn);
        put(json, "note", note);
        json.put("number", number.toString());
        json.put("sex", sex.word());
        put(json, "born", born);
        json.put("origin", origin.word());
        put(json, "sourceCode", sourceCode == null ? null : sourceCode.letter());
        if (malformed) {
            json.put("malformed", 1);
        }
        if (locality != null) {
            var claim = json.putObject("locality");
            put(claim, "locality", locality.locality());
            claim.put("certainty", locality.certainty().word());
        }
        transponders.forEach(json.putArray("transponders")::add);
        marks.forEach(json.putArray("marks")::add);
        put(json, "notes", notes);
        var told = json.putArray("forebears");
        forebears.forEach(forebear -> write(told.addObject(), forebear));
        return json;
    }

    private static void write(ObjectNode json, Forebear forebear) {
        json.put("animal", forebear.animal.toString());
        put(json, "number", forebear.number);
        put(json, "sex", forebear.sex == null ? null : forebear.sex.word());
        if (forebear.born != null) {
            json.put("born", forebear.born);
        }
        put(json, "dam", forebear.dam);
        if (forebear.founder) {
            json.put("founder", 1);
        }
        if (!forebear.sires.isEmpty()) {
            ArrayNode sires = json.putArray("sires");
            forebear.sires.forEach(share ->
                    sires.addObject().put("sire", share.sire.toString()).put("share", share.share));
        }
    }

    private static void put(ObjectNode json, String name, @Nullable Object value) {
        if (value != null) {
            json.put(name, value.toString());
        }
    }

    static String text(ObjectNode json) {
        return new String(CanonicalJson.write(json), StandardCharsets.UTF_8);
    }

    // ── read ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    /** @throws IllegalArgumentException for what is no such record; it may come from anybody */
    static HandedRecord parse(String canonical) {
        return read(CanonicalJson.read(canonical.getBytes(StandardCharsets.UTF_8), MOST_BYTES));
    }

    /** Empty for what is no such record, or is not there. */
    static Optional<HandedRecord> tryRead(@Nullable ObjectNode json) {
        try {
            return json == null ? Optional.empty() : Optional.of(read(json));
        } catch (IllegalArgumentException | DateTimeException e) {
            return Optional.empty();
        }
    }

    /**
     * Fields that are not known are passed over, so that later versions can be read.
     *
     * @throws IllegalArgumentException for what is no such record; it may come from anybody
     */
    static HandedRecord read(ObjectNode json) {
        var kind = Kind.parse(needed(json, "kind", LONGEST));
        return new HandedRecord(
                needed(json, "addressee", LONGEST),
                text(json, "giver", LONGEST).orElse(null),
                kind,
                text(json, "handedOverOn", LONGEST).map(HandedRecord::day).orElse(null),
                text(json, "note", LONGEST_NOTE).orElse(null),
                StudbookNumber.parse(needed(json, "number", LONGEST)),
                Sex.parse(needed(json, "sex", LONGEST)),
                text(json, "born", LONGEST).map(RoughDate::parse).orElse(null),
                Origin.parse(needed(json, "origin", LONGEST)),
                text(json, "sourceCode", LONGEST).map(SourceCode::parse).orElse(null),
                isSet(json, "malformed"),
                json.get("locality") instanceof ObjectNode claim ? locality(claim) : null,
                list(json, "transponders", MOST_IDENTIFIERS, item -> transponder(item)),
                list(json, "marks", MOST_IDENTIFIERS, item -> asText(item, LONGEST)),
                text(json, "notes", LONGEST_NOTES).orElse(null),
                list(json, "forebears", MOST_FOREBEARS, HandedRecord::forebear));
    }

    private static LocalDate day(String text) {
        return RoughDate.parse(text).day().orElseThrow(() -> new IllegalArgumentException("is no day: " + text));
    }

    private static LocalityClaim locality(ObjectNode claim) {
        return new LocalityClaim(
                text(claim, "locality", LocalityClaim.LONGEST).orElse(null),
                LocalityClaim.Certainty.parse(needed(claim, "certainty", LONGEST)));
    }

    private static String transponder(JsonNode item) {
        var written = asText(item, LONGEST);
        Transponder.parse(written);
        return written;
    }

    private static Forebear forebear(JsonNode item) {
        if (!(item instanceof ObjectNode json)) {
            throw new IllegalArgumentException("an ancestor is an object");
        }
        return new Forebear(
                AnimalId.parse(needed(json, "animal", LONGEST)),
                text(json, "number", LONGEST).map(StudbookNumber::parse).orElse(null),
                text(json, "sex", LONGEST).map(Sex::parse).orElse(null),
                json.has("born") ? year(json.get("born")) : null,
                text(json, "dam", LONGEST).map(AnimalId::parse).orElse(null),
                list(json, "sires", MOST_SIRES, HandedRecord::sire),
                isSet(json, "founder"));
    }

    private static int year(JsonNode born) {
        if (!born.isInt() || born.intValue() < FIRST_YEAR || born.intValue() > LAST_YEAR) {
            throw new IllegalArgumentException("is no year: " + born);
        }
        return born.intValue();
    }

    private static SireShare sire(JsonNode item) {
        if (!(item instanceof ObjectNode json)
                || !json.path("share").isInt()
                || json.path("share").intValue() < 1
                || json.path("share").intValue() > WHOLE) {
            throw new IllegalArgumentException("a sire has a share from 1 to a million");
        }
        return new SireShare(
                AnimalId.parse(needed(json, "sire", LONGEST)),
                json.path("share").intValue());
    }

    private static boolean isSet(ObjectNode json, String name) {
        return json.path(name).isInt() && json.path(name).intValue() == 1;
    }

    private static <T> List<T> list(ObjectNode json, String name, int most, Function<JsonNode, T> read) {
        var items = new ArrayList<T>();
        if (json.has(name)) {
            var array = json.get(name);
            if (!array.isArray() || array.size() > most) {
                throw new IllegalArgumentException(name + " is no list of at most " + most);
            }
            array.forEach(item -> items.add(read.apply(item)));
        }
        return List.copyOf(items);
    }

    private static String needed(ObjectNode json, String name, int most) {
        return text(json, name, most).orElseThrow(() -> new IllegalArgumentException(name + " is missing"));
    }

    private static Optional<String> text(ObjectNode json, String name, int most) {
        return Optional.ofNullable(json.get(name)).map(value -> asText(value, most));
    }

    private static String asText(JsonNode value, int most) {
        if (!value.isTextual()
                || value.textValue().isBlank()
                || value.textValue().length() > most) {
            throw new IllegalArgumentException("is no text of 1 to " + most + " characters");
        }
        return value.textValue();
    }
}
