package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.function.Consumer;
import org.demebook.kinship.Convention;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A season that is written as JSON and read again is the same season, to the last bit. */
class SeasonFormTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Effort SMALL = new Effort(60, 2, 4_000, 1);

    private static String written(Season season) throws JsonProcessingException {
        return JSON.writeValueAsString(season.form());
    }

    private static Season read(String json) throws JsonProcessingException {
        return Season.of(JSON.readValue(json, SeasonForm.class));
    }

    private static Planned plan(Season season) {
        return new SeasonPlanner(season, SMALL, Watch.NOBODY).plan();
    }

    @Test
    void a_season_that_was_written_and_read_has_the_same_plan_to_the_last_bit() throws JsonProcessingException {
        int possible = 0;
        for (int seed = 0; seed < 80; seed++) {
            var season = new Herd(seed, 6, 8, 7, seed % 7).limited(3, 1 + seed % 5, seed % 3 > 0);
            String json = written(season);
            var again = read(json);
            assertThat(written(again)).as("seed %d", seed).isEqualTo(json);
            var planned = plan(season);
            // records compare doubles by their bits
            assertThat(plan(again)).as("seed %d", seed).isEqualTo(planned);
            if (planned instanceof SeasonPlan) {
                possible++;
            }
            if (planned instanceof SeasonPlan plan && seed % 9 == 0) {
                assertThat(new SeasonPlanner(again, SMALL, Watch.NOBODY).curve(plan))
                        .as("seed %d", seed)
                        .isEqualTo(new SeasonPlanner(season, SMALL, Watch.NOBODY).curve(plan));
            }
        }
        assertThat(possible).isGreaterThan(40);
    }

    @Test
    void so_it_is_with_settled_pairs_many_animals_and_unknown_parents_taken_as_full_siblings()
            throws JsonProcessingException {
        var herd = new Herd(3, 9, 30, 24, 5);
        var pedigree = herd.pedigree.under(Convention.UNKNOWN_FULL_SIBS);
        var season = Season.of(pedigree, pedigree.pool(herd.pool), herd.females, herd.males)
                .litters(9)
                .young(3, 1 / 3.0)
                .young(4, Math.PI)
                .lock(3, 7)
                .lock(11, 0)
                .build();
        assertThat(plan(read(written(season)))).isEqualTo(plan(season));
    }

    @Test
    void whoever_changes_a_form_changes_no_season() {
        var season = new Herd(4, 6, 5, 4, 3).season().litters(3).build();
        var before = plan(season);
        var form = season.form();
        var other = Season.of(form);
        Arrays.fill(form.young(), 9);
        Arrays.fill(form.toPool(), 0);
        Arrays.fill(form.kinship()[3], 0);
        Arrays.fill(form.littersOfMale(), 0);
        assertThat(plan(season)).isEqualTo(before);
        assertThat(plan(other)).isEqualTo(before);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            /poolSize                  ; 0                 ; above 0
            /poolSize                  ; "NaN"             ; above 0
            /poolMeanKinship           ; 1.5               ; in [0, 1]
            /toPool/2                  ; -0.1              ; in [0, 1]
            /kinship/2/1               ; 1.01              ; in [0, 1]
            /kinship/2                 ; [0.5, 0.1]        ; kinships in row 2
            /kinship/2                 ; null              ; missing
            /kinship                   ; []                ; rows of kinship
            /toPool                    ; [0.1]             ; kinships to the pool
            /young/0                   ; 0                 ; above 0
            /young                     ; null              ; missing
            /allowed                   ; [[0]]             ; allowed males
            /allowed/1                 ; [0, 4]            ; no male 4 among 4
            /allowed/1                 ; [-1]              ; no male -1
            /allowed/1                 ; [2, 1]            ; ascend
            /allowed/1                 ; [1, 1]            ; ascend
            /littersOfMale/1           ; -1                ; below 0
            /collection/8              ; 2                 ; no collection 2 among 2
            /collection                ; [0]               ; places where candidates live
            /littersOfCollection/0     ; -5                ; below 0
            /travellersOfCollection    ; [1]               ; limits on travellers
            /least                     ; -1                ; below 0
            /least                     ; 4                 ; at least 4 litters and at most 3
            /locked/0/female           ; 5                 ; no female 5 among 5
            /locked/0/male             ; 4                 ; no male 4 among 4
            /locked/1                  ; {"female": 1, "male": 2} ; settled twice
            """)
    void a_form_that_is_of_no_season_is_refused(String at, String value, String told) throws JsonProcessingException {
        var season = new Herd(4, 6, 5, 4, 3)
                .season()
                .collections(2)
                .litters(3)
                .lock(1, 2)
                .lock(0, 1)
                .build();
        var json = JSON.readTree(written(season));
        int last = at.lastIndexOf('/');
        setter(json.at(at.substring(0, last)), at.substring(last + 1)).accept(JSON.readTree(value));
        var form = JSON.treeToValue(json, SeasonForm.class);
        assertThatIllegalArgumentException().isThrownBy(() -> Season.of(form)).withMessageContaining(told);
    }

    private static Consumer<JsonNode> setter(JsonNode parent, String name) {
        return parent instanceof ObjectNode object
                ? value -> object.set(name, value)
                : value -> ((ArrayNode) parent).set(Integer.parseInt(name), value);
    }
}
