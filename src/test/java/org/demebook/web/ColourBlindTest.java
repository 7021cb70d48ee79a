package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Who lacks a kind of cone still tells the lines of a plot apart, even before reading their labels. */
class ColourBlindTest {
    /** About ten just noticeable differences; common practice, no source. */
    private static final double APART = 23;

    @Test
    void lightness_and_hue_are_those_of_the_standard() {
        // sRGB red in CIE L*a*b* under D65: 53.24, 80.09, 67.20 (widely published; from memory)
        assertThat(Colour.of("#ff0000").lab()[0]).isCloseTo(53.24, within(0.01));
        assertThat(Colour.of("#ff0000").lab()[1]).isCloseTo(80.09, within(0.01));
        assertThat(Colour.of("#ff0000").lab()[2]).isCloseTo(67.20, within(0.01));
        // a grey is a grey for everybody
        for (var sight : Colour.Sight.values()) {
            assertThat(Colour.of("#808080").distance(Colour.of("#808080"), sight))
                    .isZero();
            assertThat(Colour.of("#000000").distance(Colour.of("#ffffff"), sight))
                    .as("%s", sight)
                    .isCloseTo(100, within(0.01));
        }
    }

    @Test
    void red_and_green_of_one_lightness_are_alike_without_the_cone_for_green() {
        var red = Colour.of("#a05050");
        var green = Colour.of("#6c6c48");
        assertThat(red.distance(green, Colour.Sight.TRICHROMAT)).isGreaterThan(APART);
        assertThat(red.distance(green, Colour.Sight.DEUTERANOPE)).isLessThan(APART);
    }

    @Test
    void the_six_colours_of_categories_are_told_apart_by_every_eye() {
        for (var colours : List.of(Stylesheet.light(), Stylesheet.darkAsChosen())) {
            var six = IntStream.rangeClosed(1, 6)
                    .mapToObj(i -> colours.get("c" + i))
                    .toList();
            for (var sight : Colour.Sight.values()) {
                for (int a = 0; a < six.size(); a++) {
                    for (int b = 0; b < a; b++) {
                        assertThat(six.get(a).distance(six.get(b), sight))
                                .as("c%d and c%d, %s, %s", a + 1, b + 1, sight, six)
                                .isGreaterThan(APART);
                    }
                }
            }
        }
    }
}
