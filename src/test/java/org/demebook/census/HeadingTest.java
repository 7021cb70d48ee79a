package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.demebook.notation.RoughDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeadingTest {
    @ParameterizedTest
    @CsvSource({
        "all, all, all, true",
        "female, all, all, true",
        "male, all, all, false",
        "all, immature, all, true",
        "all, young, all, true",
        "all, adult, all, false",
        "all, all, 2010s, true",
        "all, all, 2000s, false",
        "all, all, before 2020, true",
        "all, all, before 2010, false",
        "all, all, unknown, false"
    })
    void a_heading_covers_what_it_says(String sex, String age, String born, boolean covered) {
        var figure = new Heading(sex, age, born, "all").figure();
        assertThat(figure.covers().test(Heading.baseCell("female", "young", "2010s")))
                .isEqualTo(covered);
    }

    @ParameterizedTest
    @CsvSource({"all, false", "North, true", "South, false", "not stated, false"})
    void a_region_covers_the_cell_of_its_division_and_none_of_the_others(String region, boolean covered) {
        var figure = new Heading("all", "all", "all", region).figure();
        assertThat(figure.covers().test(Heading.baseCell("North"))).isEqualTo(covered);
        assertThat(figure.covers().test(Heading.baseCell("female", "young", "2010s")))
                .isEqualTo(region.equals("all"));
    }

    @Test
    void before_some_year_are_only_those_whose_birth_is_known() {
        assertThat(new Heading("all", "all", "before 2010", "all")
                        .figure()
                        .covers()
                        .test(Heading.baseCell("female", "adult", "unknown")))
                .isFalse();
    }

    @ParameterizedTest
    @CsvSource({"2014-07-01, 2010s", "2010, 2010s", "2010-01-01/.., unknown", "../2009, unknown", "2020-06, 2020s"})
    void a_birth_that_is_known_roughly_has_a_decade_where_every_possible_day_gives_the_same(
            String born, String decade) {
        var rough = RoughDate.parse(born);
        assertThat(CountedAnimal.decade(rough.earliest(), rough.latest())).isEqualTo(decade);
    }

    @Test
    void an_unknown_birth_has_no_decade() {
        assertThat(CountedAnimal.decade(null, LocalDate.of(2020, 1, 1))).isEqualTo("unknown");
        assertThat(CountedAnimal.decade(LocalDate.of(2019, 12, 31), LocalDate.of(2020, 1, 1)))
                .isEqualTo("unknown");
    }
}
