package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.util.Collections;
import java.util.List;
import org.demebook.plot.Shares.Share;
import org.junit.jupiter.api.Test;

class SharesTest {
    private static final Shares.Words WORDS = new Shares.Words("Founder", "Contribution", "Aimed at", "none");

    private static Shares shares(Share... shares) {
        return Shares.of(Samples.caption("founders", "Founders"), List.of(shares), Samples.KINSHIP, WORDS);
    }

    private static List<Rectangle2D> drawn(Frame frame, String css) {
        return frame.shapes().stream()
                .filter(shape -> shape.css().equals(css))
                .flatMap(shape -> PathReader.bounds(shape.d()).stream())
                .toList();
    }

    @Test
    void the_largest_comes_first_and_its_aim_is_measured_on_the_same_scale() {
        var plot = shares(
                new Share(Name.of("a"), .1, .25),
                new Share(Name.of("b"), .6, .25),
                new Share(Name.of("c"), .3, Double.NaN));
        assertThat(plot.table().rows()).extracting(row -> row.name().text()).containsExactly("b", "c", "a");
        assertThat(plot.table().rows().stream()
                        .flatMap(row -> row.cells().stream())
                        .map(Table.Cell::text))
                .containsExactly("0.600", "0.250", "0.300", "none", "0.100", "0.250");
        for (var frame : plot.frames()) {
            var bars = drawn(frame, "bar c1");
            double unit = bars.get(0).getWidth() / .6;
            assertThat(bars.get(1).getWidth()).isEqualTo(.3 * unit, within(.2));
            assertThat(bars.get(2).getWidth()).isEqualTo(.1 * unit, within(.2));
            var targets = drawn(frame, "target");
            assertThat(targets).hasSize(2).allSatisfy(target -> assertThat(
                            target.getX() - bars.get(0).getX())
                    .isEqualTo(.25 * unit, within(.2)));
            assertThat(targets.get(1).getMinY()).isLessThan(bars.get(2).getMinY());
            assertThat(targets.get(1).getMaxY()).isGreaterThan(bars.get(2).getMaxY());
        }
    }

    @Test
    void where_nothing_is_aimed_at_there_is_no_such_column() {
        var plot = shares(new Share(Name.of("a"), 1, Double.NaN));
        assertThat(plot.table().heads()).extracting(Table.Cell::text).containsExactly("Founder", "Contribution");
        assertThat(plot.keys()).extracting(Key::text).containsExactly("Contribution");
    }

    @Test
    void what_cannot_be_read_is_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Share(Name.of("a"), -.1, 0))
                .withMessageContaining("a");
        assertThatIllegalArgumentException().isThrownBy(() -> new Share(Name.of("a"), Double.NaN, 0));
        var many = Collections.nCopies(61, new Share(Name.of("a"), .1, .1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Shares.of(Samples.caption("f", "f"), many, Samples.KINSHIP, WORDS));
    }
}
