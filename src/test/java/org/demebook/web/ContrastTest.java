package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * The colours of {@code app.css} against WCAG 2.2: criterion 1.4.3 for text (4.5 : 1), 1.4.11 for shapes that say something
 * (3 : 1). The pairs are those of the table in docs/design.md, and its figures have to be true.
 */
class ContrastTest {
    private static final Map<String, Double> NEEDS = Map.of("text", 4.5, "shape", 3.0);

    private record Pair(String kind, String above, String below, double light, double dark) {}

    @Test
    void the_formula_is_that_of_the_standard() {
        // WCAG 2.2, definition of "contrast ratio": it ranges from 1 to 21
        assertThat(Colour.of("#000000").contrast(Colour.of("#ffffff"))).isCloseTo(21, within(1e-12));
        assertThat(Colour.of("#123456").contrast(Colour.of("#123456"))).isEqualTo(1);
        // worked examples in the description of the npm package contrast-ratio-checker
        assertThat(Colour.of("#ff8100").luminance()).isCloseTo(0.36960513804637335, within(1e-12));
        assertThat(Colour.of("#ff8100").contrast(Colour.of("#64003a"))).isCloseTo(5.235369975583679, within(1e-12));
        assertThat(Colour.of("#e5e5e5").contrast(Colour.of("#aabb00"))).isCloseTo(1.698093107780376, within(1e-12));
        // the lightest grey that passes on white: widely published as 4.54
        assertThat(Colour.of("#767676").contrast(Colour.of("#ffffff"))).isCloseTo(4.54, within(0.005));
    }

    @Test
    void every_pair_of_the_table_is_legible_in_light_and_dark() {
        assertThat(pairs()).hasSizeGreaterThan(20).allSatisfy(pair -> {
            assertThat(contrast(pair, Stylesheet.light())).as("%s, light", pair).isGreaterThanOrEqualTo(needs(pair));
            assertThat(contrast(pair, Stylesheet.darkAsTheDeviceHasIt()))
                    .as("%s, dark", pair)
                    .isGreaterThanOrEqualTo(needs(pair));
        });
    }

    @Test
    void the_figures_of_the_table_are_true_and_never_rounded_up() {
        assertThat(pairs()).allSatisfy(pair -> {
            assertThat(pair.light()).as("%s, light", pair).isEqualTo(tenths(contrast(pair, Stylesheet.light())));
            assertThat(pair.dark())
                    .as("%s, dark", pair)
                    .isEqualTo(tenths(contrast(pair, Stylesheet.darkAsTheDeviceHasIt())));
        });
    }

    @Test
    void dark_is_the_same_whether_the_device_or_the_keeper_chose_it() {
        assertThat(Stylesheet.darkAsChosen()).isEqualTo(Stylesheet.darkAsTheDeviceHasIt());
        assertThat(Stylesheet.darkAsChosen().keySet())
                .isEqualTo(Stylesheet.light().keySet())
                .hasSizeGreaterThan(25);
    }

    @Test
    void every_colour_that_text_has_in_the_stylesheet_is_in_the_table() {
        var ofText = new TreeSet<String>();
        var use =
                Pattern.compile("(?<![-a-z])color:\\s*var\\(--([a-z0-9-]+)\\)").matcher(Stylesheet.css());
        while (use.find()) {
            ofText.add(use.group(1));
        }
        assertThat(ofText).isNotEmpty();
        assertThat(pairs().stream().filter(pair -> pair.kind().equals("text")).map(Pair::above))
                .containsAll(ofText);
    }

    @Test
    void every_ground_that_text_stands_on_is_in_the_table() {
        var grounds = new TreeSet<String>();
        var use = Pattern.compile("background:\\s*var\\(--([a-z0-9-]+)\\)").matcher(Stylesheet.css());
        while (use.find()) {
            grounds.add(use.group(1));
        }
        // a picture that has not come yet, and a button while it is pressed
        grounds.remove("line");
        assertThat(grounds).isNotEmpty();
        assertThat(pairs().stream().filter(pair -> pair.kind().equals("text")).map(Pair::below))
                .containsAll(grounds);
    }

    @Test
    void the_ramp_goes_one_way_from_quiet_to_loud() {
        for (var colours : List.of(Stylesheet.light(), Stylesheet.darkAsChosen())) {
            var panel = colours.get("panel");
            var ramp = IntStream.range(0, 8).mapToObj(i -> colours.get("k" + i)).toList();
            for (int i = 1; i < ramp.size(); i++) {
                assertThat(ramp.get(i).contrast(panel))
                        .as("k%d against k%d, on %s", i, i - 1, panel)
                        .isGreaterThan(1.15 * ramp.get(i - 1).contrast(panel)); // common practice, no source
            }
        }
    }

    private static double contrast(Pair pair, Map<String, Colour> colours) {
        assertThat(colours).as("%s", pair).containsKeys(pair.above(), pair.below());
        return colours.get(pair.above()).contrast(colours.get(pair.below()));
    }

    private static double needs(Pair pair) {
        assertThat(NEEDS).containsKey(pair.kind());
        return NEEDS.get(pair.kind());
    }

    private static double tenths(double ratio) {
        return Math.floor(ratio * 10) / 10;
    }

    /** Rows such as {@code | text | `--ink` | `--paper` | 15.2 | 15.3 |}. */
    private static List<Pair> pairs() {
        return Pattern.compile("(?m)^\\| (\\w+) \\| `--([\\w-]+)` \\| `--([\\w-]+)` \\| ([\\d.]+) \\| ([\\d.]+) \\|")
                .matcher(Stylesheet.page())
                .results()
                .map(row -> new Pair(
                        row.group(1),
                        row.group(2),
                        row.group(3),
                        Double.parseDouble(row.group(4)),
                        Double.parseDouble(row.group(5))))
                .toList();
    }
}
