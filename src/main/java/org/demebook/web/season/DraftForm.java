package org.demebook.web.season;

import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.demebook.programme.NewDraft;
import org.demebook.programme.NewDraft.Capacity;
import org.demebook.programme.NewDraft.Two;
import org.demebook.web.Typed;
import org.jspecify.annotations.Nullable;

/**
 * A draft as it is asked for in a form: several animals are written one a line, pairs as dam and sire, a capacity as an animal and a
 * number.
 */
final class DraftForm {
    static final String TOGETHER = "togetherLines";
    static final String APART = "apartLines";
    static final String LEFT_OUT = "leftOutLines";
    static final String LOST = "lostLines";
    static final String CAPACITY = "capacityLines";

    private static final Pattern BETWEEN = Pattern.compile("\\s+[xX]\\s+|[\\s,;×+]+");
    private static final Pattern LINES = Pattern.compile("\\R");

    private DraftForm() {}

    /** The fields of the body. */
    static Typed body(Typed typed, MultivaluedMap<String, String> form) {
        var body = new MultivaluedHashMap<String, String>(form);
        List.of(TOGETHER, APART, LEFT_OUT, LOST, CAPACITY).forEach(body::remove);
        twos(body, "together", typed.value(TOGETHER), "dam", "sire");
        twos(body, "apart", typed.value(APART), "dam", "sire");
        twos(body, "whatIf.capacity", typed.value(CAPACITY), "animal", "litters");
        numbers(body, "leftOut[]", typed.value(LEFT_OUT));
        numbers(body, "whatIf.lost[]", typed.value(LOST));
        return Typed.of(body);
    }

    private static void twos(
            MultivaluedMap<String, String> body, String list, String text, String first, String second) {
        int place = 0;
        for (var line : lines(text)) {
            var words = BETWEEN.split(line, 2);
            body.putSingle("%s[%d].%s".formatted(list, place, first), words[0]);
            body.putSingle("%s[%d].%s".formatted(list, place, second), words.length > 1 ? words[1] : "");
            place++;
        }
    }

    private static void numbers(MultivaluedMap<String, String> body, String field, String text) {
        var numbers = lines(text).stream()
                .flatMap(line -> BETWEEN.splitAsStream(line))
                .filter(number -> !number.isEmpty())
                .toList();
        if (!numbers.isEmpty()) {
            body.put(field, new ArrayList<>(numbers));
        }
    }

    private static List<String> lines(String text) {
        return LINES.splitAsStream(text)
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
    }

    /** What was asked of another draft, to change some of it. */
    static Typed of(NewDraft asked) {
        var typed = Typed.nothing()
                .with("pairOn", asked.pairOn())
                .with("litters", asked.litters())
                .with("littersAtMost", asked.littersAtMost())
                .with("youngKept", asked.youngKept())
                .with("youngInAll", asked.youngInAll())
                .with("chanceOfLitter", asked.chanceOfLitter())
                .with("maximumInbreeding", asked.maximumInbreeding())
                .with("leastKnownAncestry", asked.leastKnownAncestry())
                .with("lookAhead", asked.lookAhead())
                .with("littersOfMale", asked.littersOfMale())
                .with(TOGETHER, pairs(asked.together()))
                .with(APART, pairs(asked.apart()))
                .with(LEFT_OUT, joined(asked.leftOut()))
                .with("follows", asked.follows())
                .with("seed", asked.seed());
        var whatIf = asked.whatIf();
        return whatIf == null
                ? typed
                : typed.with("whatIf.newFemales", whatIf.newFemales())
                        .with("whatIf.newMales", whatIf.newMales())
                        .with(LOST, joined(whatIf.lost()))
                        .with(CAPACITY, capacities(whatIf.capacity()));
    }

    /** One line more. */
    static Typed and(Typed typed, String field, @Nullable String line) {
        var before = typed.text(field);
        return line == null ? typed : typed.with(field, before == null ? line : before + "\n" + line);
    }

    private static @Nullable String pairs(@Nullable List<Two> pairs) {
        return pairs == null
                ? null
                : joined(pairs.stream().map(two -> two.dam() + " " + two.sire()).toList());
    }

    private static @Nullable String capacities(@Nullable List<Capacity> capacities) {
        return capacities == null
                ? null
                : joined(capacities.stream()
                        .map(capacity -> capacity.animal() + " " + capacity.litters())
                        .toList());
    }

    private static @Nullable String joined(@Nullable List<String> lines) {
        return lines == null ? null : String.join("\n", lines);
    }
}
