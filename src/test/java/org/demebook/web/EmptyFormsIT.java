package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Every form of every page, sent as it is by who has filled nothing in. On a server of its own: some forms need no more than a tap. */
class EmptyFormsIT {
    @Test
    void every_form_sent_empty_comes_back_and_says_what_is_missing() {
        try (var server = DemoServer.started();
                var walker = Visitor.keeper(server, "wren", Look.DESK);
                var sender = Visitor.keeper(server, "wren", Look.PHONE)) {
            var pages = new Walk(walker, 1).from("/", page -> {}).pages();
            var forms = new EmptyForms(sender);
            pages.forEach(page -> forms.sendAll(page.path()));

            System.out.println("forms sent empty: " + forms.sent());
            assertThat(forms.sent()).hasSizeGreaterThan(2);
            assertThat(forms.faults()).isEmpty();
        }
    }
}
