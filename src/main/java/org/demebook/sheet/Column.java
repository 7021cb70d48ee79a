package org.demebook.sheet;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The columns of a sheet in the order in which they are written; read in any order. */
public enum Column {
    NUMBER("studbooknumber", "studbookno", "zuchtbuchnummer"),
    REFERENCE("id", "name", "ownreference", "ref", "animal", "animalid", "kennung"),
    DAM("mother", "damid", "mutter"),
    SIRE("father", "sireid", "vater"),
    SEX("gender", "geschlecht"),
    BORN(
            "birth",
            "birthdate",
            "birthday",
            "dateofbirth",
            "dob",
            "bornon",
            "hatched",
            "hatchdate",
            "birthyear",
            "yearofbirth",
            "geboren",
            "geburtsdatum"),
    DIED("death", "deathdate", "dateofdeath", "diedon", "gestorben"),
    ORIGIN("wccb", "cbwc", "wildorcaptive", "herkunft"),
    SOURCE("sourcecode", "citessource", "citessourcecode"),
    LOCALITY("locale", "provenance", "fundort"),
    LOCALITY_CERTAINTY("localitycertainty", "fundortsicherheit"),
    COLLECTION("heldin", "bestand"),
    TRANSPONDERS("transponder", "chip", "chips", "microchip", "microchips", "pit", "pittag", "pittags"),
    MARKS("mark", "markings", "marking", "kennzeichen"),
    NOTES("note", "comment", "comments", "remark", "remarks", "bemerkung", "bemerkungen");

    // the further names are common practice, no source
    private final List<String> synonyms;

    private static final Pattern NOT_READ = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final Map<String, Column> BY_NAME = byName();

    Column(String... synonyms) {
        this.synonyms = List.of(synonyms);
    }

    /** The name under which it is written. */
    public String header() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Which column a header means; case, spaces, underscores and other signs do not count. */
    static Optional<Column> of(String header) {
        return Optional.ofNullable(
                BY_NAME.get(NOT_READ.matcher(header).replaceAll("").toLowerCase(Locale.ROOT)));
    }

    /** The column of that canonical name. */
    public static Optional<Column> named(String header) {
        return Arrays.stream(values())
                .filter(column -> column.header().equals(header))
                .findFirst();
    }

    static String allHeaders() {
        return Arrays.stream(values()).map(Column::header).collect(Collectors.joining(", "));
    }

    private static Map<String, Column> byName() {
        var names = new HashMap<String, Column>();
        for (var column : values()) {
            names.put(column.header(), column);
            column.synonyms.forEach(synonym -> names.put(synonym, column));
        }
        return names;
    }
}
