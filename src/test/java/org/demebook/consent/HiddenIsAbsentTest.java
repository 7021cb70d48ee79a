package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.StreamSupport;
import org.demebook.Colony;
import org.demebook.StatementCount;
import org.demebook.consent.Questions.Relation;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * What is hidden from somebody is answered as what does not exist: the same status, headers and words, but for the number or id
 * itself, and as many statements sent to the database, so that not even the time it takes says more than chance does. Every
 * operation of the contract that names a thing, in its path or its body, is asked about a foreign hidden one and an absent one.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class HiddenIsAbsentTest {
    private static final List<String> ASKERS = List.of(INES, WREN, "administrator");

    /**
     * What is nobody's to hide: releases of counts are public; coordinators, who end memberships, list them; and nodes are there for
     * administrators, while keepers are refused before anything is looked up.
     */
    private static final Set<String> NOBODYS_OWN = Set.of(
            "getCountRelease",
            "getCountTable",
            "getCountArchive",
            "getCountArchiveByRegion",
            "endMembership",
            "setNodeAside",
            "followNodeAgain");

    /** Coordinators see every dispute: they settle them; and every animal that was adopted and has no keeper: they say who that is. */
    private static final Set<String> COORDINATORS_SEE =
            Set.of("getDispute", "concedeDispute", "settleDispute", "withdrawDispute", "placeAdoptedAnimal");

    /** A number of statements may be higher for a reason of its own, such as somebody's account being looked up again. */
    private static final int TIMES = 3;

    /** @param said status, headers and body, with N for what was asked about */
    private record Answer(String said, long statements) {
        /** The same asked again. */
        Answer or(Answer again) {
            return new Answer(said, Math.min(statements, again.statements));
        }
    }

    @Test
    void what_is_hidden_is_answered_as_what_does_not_exist() {
        var questions = new Questions();
        var different = new ArrayList<String>();
        int compared = 0;
        for (var operation : Operation.all()) {
            if (!hides(operation)) {
                continue;
            }
            var foreign = questions.about(operation, INES, Relation.FOREIGN);
            for (var asker : ASKERS) {
                if (asker.equals(WREN) && COORDINATORS_SEE.contains(operation.id())) {
                    continue;
                }
                // what is between dov and somebody is between him and a third one
                var hidden = asker.equals(WREN) ? questions.about(operation, WREN, Relation.FOREIGN) : foreign;
                var difference = difference(asker, hidden, questions.about(operation, asker, Relation.ABSENT));
                compared++;
                if (!difference.isEmpty()) {
                    different.add("%s, %s: %s".formatted(operation.name(), asker, difference));
                }
            }
        }
        assertThat(different).isEmpty();
        assertThat(compared).isGreaterThan(270);
    }

    @Test
    void the_comparison_tells_what_is_seen_from_what_is_not() {
        var questions = new Questions();
        var reading = Operation.all().stream()
                .filter(operation -> operation.id().equals("getAnimal"))
                .findFirst()
                .orElseThrow();
        var seen = answer(INES, questions.about(reading, INES, Relation.GRANTED));
        var absent = answer(INES, questions.about(reading, INES, Relation.ABSENT));
        assertThat(seen.said).isNotEqualTo(absent.said);
        assertThat(seen.statements).isGreaterThan(absent.statements);
    }

    private static boolean hides(Operation operation) {
        return operation.isAboutAThing() && !NOBODYS_OWN.contains(operation.id());
    }

    /** Empty where there is none. */
    private String difference(String asker, Question hidden, Question absent) {
        var ofHidden = answer(asker, hidden);
        var ofAbsent = answer(asker, absent);
        for (int i = 0; i < TIMES && ofHidden.statements != ofAbsent.statements; i++) {
            ofHidden = ofHidden.or(answer(asker, hidden));
            ofAbsent = ofAbsent.or(answer(asker, absent));
        }
        return ofHidden.equals(ofAbsent) ? "" : "%n  hidden %s%n  absent %s".formatted(ofHidden, ofAbsent);
    }

    private Answer answer(String asker, Question question) {
        long before = StatementCount.ofRequests();
        var response = question.send(Colony.as(asker));
        return new Answer(said(response, question), StatementCount.ofRequests() - before);
    }

    private static String said(Response response, Question question) {
        var headers = StreamSupport.stream(response.headers().spliterator(), false)
                .map(header -> header.getName() + ": " + header.getValue())
                .sorted()
                .toList();
        var said = response.statusCode() + " " + headers + " " + response.asString();
        for (var name : question.about()) {
            said = said.replace(name, "N");
        }
        return said;
    }
}
