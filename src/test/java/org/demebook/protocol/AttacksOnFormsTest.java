package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.demebook.signing.Malformed;
import org.demebook.signing.Malformed.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Bytes that are no page: refused before anything is built of them, and laid at the door of who gave them. */
class AttacksOnFormsTest {
    private static final String GOOD = new String(PageForm.write(new Attacked().liar.page(0)), StandardCharsets.UTF_8);

    static Stream<Arguments> pages() {
        return Stream.of(
                Arguments.of("no JSON", "<page/>", Fault.NOT_JSON),
                Arguments.of("a list", "[]", Fault.NOT_JSON),
                Arguments.of("an end too early", GOOD.substring(0, GOOD.length() / 2), Fault.NOT_JSON),
                Arguments.of("a space", GOOD.replace("\"after\":0", "\"after\": 0"), Fault.NOT_CANONICAL),
                Arguments.of("a name twice", "{\"after\":0," + GOOD.substring(1), Fault.DUPLICATE_NAME),
                Arguments.of("a fraction", GOOD.replace("\"after\":0", "\"after\":0.5"), Fault.UNSAFE_NUMBER),
                Arguments.of(
                        "a number beyond 2^53",
                        GOOD.replace("\"after\":0", "\"after\":9007199254740993"),
                        Fault.UNSAFE_NUMBER),
                Arguments.of(
                        "half a character", GOOD.replace("\"after\":0", "\"after\":\"\\ud800\""), Fault.LONE_SURROGATE),
                Arguments.of("a depth of 10 000", "{\"a\":" + "[".repeat(10_000), Fault.TOO_DEEP),
                Arguments.of("5 MB", "{\"a\":\"" + "x".repeat(5_000_000) + "\"}", Fault.TOO_LARGE),
                Arguments.of(
                        "a member that nobody knows",
                        GOOD.replace("\"alarms\":[]", "\"alarms\":[],\"also\":1"),
                        Fault.NOT_JSON),
                Arguments.of("a member missing", GOOD.replace("\"after\":0,", ""), Fault.NOT_JSON));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("pages")
    void what_is_no_page_is_refused_and_named(String what, String bytes, Fault fault) {
        var world = new Attacked();
        assertThatThrownBy(() -> PageForm.read(bytes.getBytes(StandardCharsets.UTF_8)))
                .isInstanceOfSatisfying(Malformed.class, malformed -> {
                    assertThat(malformed.fault()).isEqualTo(fault);
                    world.harbour.participant.unreadable(world.liar.id(), malformed);
                });
        world.assertDetected(world.harbour, fault == Fault.TOO_LARGE ? Alarm.Kind.OVERSIZE : Alarm.Kind.MALFORMED);
    }

    @Test
    void an_entry_larger_than_an_entry_may_be_is_named() {
        var world = new Attacked();
        world.liar.append("x".repeat(Entry.MOST_CHARACTERS + 1));
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.OVERSIZE);
    }

    @Test
    void an_entry_that_is_not_signed_at_all_is_named() {
        var world = new Attacked();
        world.liar.append("e30.e30.AAAA");
        world.givesAll(world.harbour);
        world.assertDetected(world.harbour, Alarm.Kind.MALFORMED);
    }

    @Test
    void a_good_page_is_read_as_it_was_written() {
        var bytes = GOOD.getBytes(StandardCharsets.UTF_8);
        assertThat(PageForm.write(PageForm.read(bytes))).isEqualTo(bytes);
    }
}
