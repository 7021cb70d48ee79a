package org.demebook.web;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.Route;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Sends every form of a page as somebody does who has filled nothing in, in a browser that gets no script and without
 * the browser's own checks: what answers is the server alone. Each button of a form is a form of its own.
 */
final class EmptyForms {
    private static final String FORMS = """
            forms => forms.flatMap((form, i) => {
                const buttons = [...form.elements].filter(e => e.type === 'submit');
                return (buttons.length ? buttons : [null]).map(button => ({
                    form: i,
                    button: button ? [...form.elements].indexOf(button) : -1,
                    action: new URL(button?.getAttribute('formaction') ?? form.getAttribute('action') ?? '', document.baseURI).pathname,
                    method: (button?.getAttribute('formmethod') ?? form.method).toLowerCase(),
                    named: button?.name ? button.name + '=' + button.value : ''}));
            })""";
    private static final String EMPTY_AND_SEND = """
            (form, button) => {
                for (const e of form.elements) {
                    if (e.type === 'hidden' || e.type === 'submit' || e.tagName === 'FIELDSET' || e.tagName === 'OUTPUT') continue;
                    if (e.type === 'checkbox' || e.type === 'radio') e.checked = false;
                    else if (e.tagName === 'SELECT') e.value = '';
                    else e.value = '';
                }
                form.noValidate = true;
                // an earlier form of this page may have changed what this one asks for
                const by = form.elements[button];
                form.requestSubmit(by?.type === 'submit' ? by : null);
            }""";

    private final Visitor visitor;
    private final Set<String> sent = new LinkedHashSet<>();
    private final List<String> faults = new ArrayList<>();

    /** @param visitor gets no script from now on; what looks at the pages for accessibility needs one of its own */
    EmptyForms(Visitor visitor) {
        visitor.bypassWorker(); // it would answer with the scripts that the device keeps
        visitor.context.route(address -> true, route -> {
            if (route.request().resourceType().equals("script")) {
                route.fulfill(new Route.FulfillOptions()
                        .setContentType("text/javascript")
                        .setBody(""));
            } else {
                route.resume();
            }
        });
        this.visitor = visitor;
    }

    /** Sends every form of the page, except those that were sent from another page already. */
    void sendAll(String path) {
        if (isGone(path)) {
            return;
        }
        for (var found : (List<?>) visitor.page.locator("form").evaluateAll(FORMS)) {
            var form = (Map<?, ?>) found;
            var key = "%s %s %s"
                    .formatted(
                            form.get("method"),
                            Walk.shape(visitor.server.address().resolve((String) form.get("action"))),
                            form.get("named"));
            if (!form.get("action").equals("/sign-out") && sent.add(key)) {
                send(path, form);
            }
        }
    }

    /** Whether a form that was sent before took the page away, such as that of a task that is answered now. */
    private boolean isGone(String path) {
        return visitor.opened(path).status() == 404;
    }

    private void send(String path, Map<?, ?> form) {
        var what =
                "%s: the form to %s %s %s".formatted(path, form.get("method"), form.get("action"), form.get("named"));
        if (visitor.opened(path).status() != 200) {
            return; // an earlier form of this page has ended what it was about
        }
        int index = ((Number) form.get("form")).intValue();
        if (index >= visitor.page.locator("form").count()) {
            return;
        }
        var answer = new Answer(visitor.page);
        visitor.page.locator("form").nth(index).evaluate(EMPTY_AND_SEND, form.get("button"));
        judge(what, answer.await(), form);
    }

    /** The page that a form leads to, or the file. */
    private static final class Answer {
        private final Page page;
        private Response last;
        private boolean there;

        Answer(Page page) {
            this.page = page;
            page.onResponse(this::heard);
            page.onLoad(this::loaded);
            page.onDownload(this::came);
        }

        private void heard(Response response) {
            last = response.request().isNavigationRequest() ? response : last;
        }

        private void loaded(Page now) {
            there = true;
        }

        private void came(Download file) {
            there = true;
        }

        Response await() {
            page.waitForCondition(() -> there);
            page.offResponse(this::heard);
            return last;
        }
    }

    private void judge(String what, Response answer, Map<?, ?> form) {
        int status = answer.status();
        var type = answer.headers().getOrDefault("content-type", "");
        if (status == 200 && (!type.startsWith("text/html") || answer.headers().containsKey("content-disposition"))) {
            return; // a file
        }
        var body = visitor.page.locator("main");
        if (status != 200 && status != 422) {
            faults.add("%s: sent empty, it answers %d".formatted(what, status));
        } else if (!type.startsWith("text/html")
                || body.count() != 1
                || body.innerText().isBlank()
                || visitor.page.locator("h1").count() != 1) {
            faults.add("%s: sent empty, it leads to no page of ours (%s)".formatted(what, type));
        } else if (visitor.where().startsWith("sign-in") && !form.get("action").equals("/sign-in")) {
            faults.add(what + ": sent empty, it signs out");
        } else if (status == 422) {
            judgeRefusal(what, form);
        }
    }

    private void judgeRefusal(String what, Map<?, ?> form) {
        boolean kept = visitor.page.locator("form").evaluateAll(FORMS) instanceof List<?> forms
                && forms.stream()
                        .anyMatch(other -> ((Map<?, ?>) other).get("action").equals(form.get("action")));
        if (!kept) {
            faults.add(what + ": sent empty, it is refused and the form is gone");
        }
        Locator said = visitor.page.locator(".problems, .error, [role=alert]");
        if (said.allInnerTexts().stream().allMatch(String::isBlank)) {
            faults.add(what + ": sent empty, it is refused and nothing says why");
        }
        faults.addAll(Accessibility.faults(visitor.page));
    }

    /** The forms that were sent: method, shape of the address, button. */
    Set<String> sent() {
        return sent;
    }

    List<String> faults() {
        return faults;
    }
}
