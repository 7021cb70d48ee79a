package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every page that a link leads to: it is there, everybody can use it in both appearances, it fits every window. On the way
 * its pictures are taken.
 */
class EveryPageIT {
    private static final int EACH_SHAPE = 1;

    /** What somebody was shown is looked at once; another is shown it in the same frame. */
    private static final Set<String> LOOKED_AT = new HashSet<>();

    static Stream<String> people() {
        return Stream.of("stranger", "wren", "dov");
    }

    @ParameterizedTest
    @MethodSource("people")
    void every_page_that_somebody_gets_to_is_there_and_can_be_used(String who) {
        var faults = new ArrayList<String>();
        try (var visitor = who.equals("stranger") ? Visitor.stranger(Look.DESK) : Visitor.keeper(who, Look.DESK)) {
            Consumer<Walk.Visited> look = page -> {
                boolean isNew = LOOKED_AT.add(page.shape());
                if (!isNew && !who.equals("stranger")) {
                    return;
                }
                faults.addAll(Accessibility.faultsInBothAppearances(visitor.page));
                faults.addAll(Fit.faults(visitor.page));
                if (!page.shape().contains("?") || page.shape().endsWith("/pairings?for")) {
                    Pictures.take(visitor, Pictures.name(page.shape(), who));
                }
            };
            var walk = new Walk(visitor, EACH_SHAPE).from("/", look);
            faults.addAll(walk.faults());
            System.out.printf("%s: %d pages%n", who, walk.pages().size());
            assertThat(walk.pages()).hasSizeLessThan(Walk.MOST_PAGES);
        }
        assertThat(once(faults)).isEmpty();
    }

    /** What stands in the frame is wrong on every page; once is enough to read. */
    private static List<String> once(List<String> faults) {
        return faults.stream().distinct().toList();
    }
}
