package org.demebook.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CellsTest {
    // what a spreadsheet takes for a formula: OWASP, "CSV Injection"; tab and carriage return do not come to stand
    // first,
    // since space around a text is taken off
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+49 171", "-3", "@SUM(A1)"})
    void a_text_like_a_formula_is_written_with_an_apostrophe_before_it(String text) {
        assertThat(Cells.write(text)).isEqualTo("'" + text);
        assertThat(Cells.write("\t" + text)).isEqualTo("'" + text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "=1+1", "'=1+1", "''-2", "'tis", "plain", "a=b", "two\nlines", "'"})
    void every_text_comes_back_as_it_was(String text) {
        assertThat(Cells.read(Cells.write(text))).isEqualTo(text);
    }

    @Test
    void a_formula_sign_in_a_list_of_the_keepers_own_stays() {
        assertThat(Cells.read("-12")).isEqualTo("-12");
    }

    @Test
    void line_ends_are_one_sign_and_what_cannot_be_printed_is_left_out() {
        assertThat(Cells.write("one\r\ntwo\rthree\u0007")).isEqualTo("one\ntwo\nthree");
    }

    @Test
    void several_values_in_a_cell_come_back_even_with_semicolons_in_them() {
        var values = List.of("notch; left", "spot", "back\\slash");
        assertThat(Cells.join(values)).isEqualTo("notch\\; left; spot; back\\\\slash");
        assertThat(Cells.split(Cells.join(values))).isEqualTo(values);
        assertThat(Cells.split(" a ;; b;a")).containsExactly("a", "b");
    }
}
