package org.demebook.web.animal;

import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.Objects;
import org.demebook.keeper.Standing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;

/**
 * The way of every form that changes an animal in one's hands: opened with what is known, made on the revision that was read,
 * shown again with what is wrong, and back to the animal when it was saved.
 */
@ApplicationScoped
class Corrections {
    static final String REVISION = "revision";

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Animals animals;

    /** What is changed; the revision that it is made on as the API takes it. */
    interface Change {
        void make(Standing by, Typed typed, String ifMatch);
    }

    /** A form about an animal. */
    interface Form {
        TemplateInstance of(AnimalView animal, Typed typed);
    }

    /** What stands in the fields of a form when it is opened. */
    interface Known {
        Typed of(AnimalView animal);
    }

    Response open(String population, String number, Known known, Form form) {
        var by = visit.in(population);
        var animal = held(by, number);
        return pages.show(form.of(animal, known.of(animal)));
    }

    Response make(
            String population,
            String number,
            MultivaluedMap<String, String> sent,
            Change change,
            Form form,
            String to) {
        var by = visit.in(population);
        var typed = Typed.of(sent);
        var back = address(number) + to;
        return forms.attempt(
                typed,
                () -> {
                    change.make(by, typed, typed.ifMatch());
                    return pages.goTo(back);
                },
                again -> form.of(held(by, number), again));
    }

    /** The same for what has one effect however often it is sent. */
    Response once(
            String population,
            String number,
            MultivaluedMap<String, String> sent,
            Change change,
            Form form,
            String to) {
        var by = visit.in(population);
        var typed = Typed.of(sent);
        var back = address(number) + to;
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    change.make(by, typed, "");
                    return back;
                },
                again -> form.of(held(by, number), again));
    }

    private String address(String number) {
        return visit.getBase() + "/animals/" + Animals.number(number);
    }

    /** The animal, dead or alive, in a collection of the asker's; refuses as the API does. */
    AnimalView held(Standing by, String number) {
        return animals.get(by, Objects.requireNonNull(animals.held(by, number)).number());
    }
}
