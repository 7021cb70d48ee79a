package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatMapTest {
    private static final HeatMap.Words WORDS = new HeatMap.Words("Animal", "withheld");

    @ParameterizedTest
    @CsvSource({"1,false", "8,true", "12,true", "13,false", "24,true", "25,true", "60,true", "60,false"})
    void the_cells_cover_the_matrix_exactly_each_in_its_step(int count, boolean withheld) {
        var map = Samples.heatMap(count, withheld);
        var values = Samples.kinships(count, withheld);
        double side = side(map);
        double above = map.cells().shapes().stream()
                .filter(shape -> shape.css().matches("k\\d|withheld"))
                .flatMap(shape -> PathReader.bounds(shape.d()).stream())
                .mapToDouble(bounds -> bounds.getMinY())
                .min()
                .orElseThrow();
        var found = new String[count][count];
        for (var shape : map.cells().shapes()) {
            if (!shape.css().matches("k\\d|withheld")) {
                continue;
            }
            for (var rectangle : PathReader.bounds(shape.d())) {
                assertThat(rectangle.getHeight()).isEqualTo(side, org.assertj.core.api.Assertions.within(.11));
                int row = (int) Math.round((rectangle.getMinY() - above) / side);
                for (int column = (int) Math.round(rectangle.getMinX() / side);
                        column < Math.round(rectangle.getMaxX() / side);
                        column++) {
                    assertThat(found[row][column])
                            .as("cell " + row + ", " + column)
                            .isNull();
                    found[row][column] = shape.css();
                }
            }
        }
        for (int row = 0; row < count; row++) {
            for (int column = 0; column < count; column++) {
                assertThat(found[row][column]).as("cell " + row + ", " + column).isEqualTo(step(values[row][column]));
            }
        }
        assertThat(map.cells().shapes().stream().filter(shape -> shape.css().equals("hatch")))
                .hasSize(withheld ? 1 : 0);
    }

    private static double side(HeatMap map) {
        return map.rowNames().texts().size() == 1
                ? map.cells().width() - 1
                : map.rowNames().texts().get(1).y()
                        - map.rowNames().texts().get(0).y();
    }

    /** 1/4 are full siblings, 1/8 half siblings: Lynch and Walsh (1998), table 7.1, halved relationships; from memory. */
    private static String step(double kinship) {
        return Double.isNaN(kinship)
                ? "withheld"
                : kinship >= .5
                        ? "k7"
                        : kinship >= .25
                                ? "k6"
                                : kinship >= .1875
                                        ? "k5"
                                        : kinship >= .125
                                                ? "k4"
                                                : kinship >= .0625
                                                        ? "k3"
                                                        : kinship >= .03125 ? "k2" : kinship >= .015625 ? "k1" : "k0";
    }

    @Test
    void a_picture_of_the_largest_matrix_has_few_elements() {
        assertThat(Samples.heatMap(60, true).cells().shapes()).hasSizeLessThanOrEqualTo(11);
    }

    @Test
    void the_table_tells_each_pair_once() {
        var table = Samples.heatMap(20, true).table();
        var values = Samples.kinships(20, true);
        for (int row = 0; row < 20; row++) {
            var cells = table.rows().get(row).cells();
            assertThat(cells).hasSize(row == 19 ? 20 : row + 2);
            for (int column = 0; column <= row; column++) {
                assertThat(cells.get(column).text())
                        .isEqualTo(
                                Double.isNaN(values[row][column]) ? "withheld" : "%.3f".formatted(values[row][column]));
            }
            assertThat(cells.stream().mapToInt(Table.Cell::columns).sum()).isEqualTo(20);
        }
    }

    @Test
    void a_matrix_of_others_is_told_in_full() {
        var values = new double[][] {{0, .125, .25}, {.0625, Double.NaN, .5}};
        var map = HeatMap.of(
                Samples.caption("pairs", "Pairs"),
                Samples.animals(2),
                Samples.animals(3),
                values,
                HeatMap.KINSHIP_STEPS,
                Samples.KINSHIP,
                WORDS);
        assertThat(map.table().rows().get(0).cells())
                .extracting(Table.Cell::text)
                .containsExactly("0.000", "0.125", "0.250");
        assertThat(map.table().rows().get(1).cells())
                .extracting(Table.Cell::text)
                .containsExactly("0.063", "withheld", "0.500");
        assertThat(map.table().heads())
                .extracting(Table.Cell::text)
                .containsExactly("Animal", "MC-H-1-A", "MC-H-2-B", "MC-H-3-C");
    }

    @Test
    void the_legend_names_every_step_and_what_is_withheld() {
        assertThat(Samples.heatMap(4, true).keys())
                .extracting(Key::text)
                .containsExactly(
                        "< 0.016",
                        "≥ 0.016, < 0.031",
                        "≥ 0.031, < 0.063",
                        "≥ 0.063, < 0.125",
                        "≥ 0.125, < 0.188",
                        "≥ 0.188, < 0.250",
                        "≥ 0.250, < 0.500",
                        "≥ 0.500",
                        "withheld");
        assertThat(Samples.heatMap(4, false).keys()).hasSize(8);
    }

    @Test
    void up_to_twelve_animals_each_cell_tells_its_value() {
        assertThat(texts(Samples.heatMap(12, false))).contains("0.500", "0.250");
        assertThat(texts(Samples.heatMap(13, false))).doesNotContain("0.500");
    }

    @Test
    void a_long_way_through_the_cells_has_names_at_both_ends() {
        assertThat(texts(Samples.heatMap(24, false))).containsOnlyOnce("MC-H-24-D");
        assertThat(texts(Samples.heatMap(25, false)).stream().filter("MC-H-24-D"::equals))
                .hasSize(3);
    }

    private static List<String> texts(HeatMap map) {
        return map.cells().texts().stream().map(Frame.Text::text).toList();
    }

    @Test
    void what_is_no_matrix_of_these_animals_is_refused() {
        var caption = Samples.caption("refused", "Kinship");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> symmetric(caption, 2, new double[][] {{.5, .1}, {.2, .5}}));
        assertThatIllegalArgumentException().isThrownBy(() -> symmetric(caption, 2, new double[][] {{.5}}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> symmetric(caption, 1, new double[][] {{Double.POSITIVE_INFINITY}}));
        assertThatIllegalArgumentException().isThrownBy(() -> symmetric(caption, 61, new double[61][61]));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HeatMap.symmetric(
                        caption,
                        List.of(),
                        new double[0][0],
                        List.of(1., 2., 3., 4., 5., 6., 6.),
                        Samples.KINSHIP,
                        WORDS));
    }

    private static HeatMap symmetric(Caption caption, int count, double[][] values) {
        return HeatMap.symmetric(
                caption, Samples.animals(count), values, HeatMap.KINSHIP_STEPS, Samples.KINSHIP, WORDS);
    }
}
