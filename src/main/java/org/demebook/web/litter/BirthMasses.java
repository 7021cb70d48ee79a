package org.demebook.web.litter;

import static org.demebook.problem.ProblemType.INVALID_VALUES;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.demebook.diary.CareRecords;
import org.demebook.diary.StatedCareRecord;
import org.demebook.keeper.Standing;
import org.demebook.litter.RegisteredLitter;
import org.demebook.notation.Mass;
import org.demebook.notation.StatedMass;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalView;
import org.demebook.web.FrameMessages;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.jspecify.annotations.Nullable;

/** What the young weighed when their litter was entered: one field for each, in the order in which they get their numbers. */
@ApplicationScoped
class BirthMasses {
    static final String FIELD = "masses[]";
    static final String UNIT = "massUnit";

    @Inject
    CareRecords records;

    @Inject
    Pages pages;

    /** What was typed for one young; empty when nothing was. */
    static String written(Typed typed, int place) {
        var written = typed.values(FIELD);
        return place < written.size() ? written.get(place) : "";
    }

    /** One for each field; null where nothing was weighed. Refuses with INVALID_VALUES. */
    List<@Nullable StatedMass> read(Typed typed, Mass.Unit usual) {
        var unit = Objects.requireNonNullElse(typed.text(UNIT), usual.word());
        var masses = new ArrayList<@Nullable StatedMass>();
        var findings = new ArrayList<Finding>();
        var written = typed.values(FIELD);
        for (int i = 0; i < written.size(); i++) {
            var text = written.get(i).strip().replace(',', '.');
            if (text.isEmpty()) {
                masses.add(null);
            } else if (text.matches("\\d{1,6}(\\.\\d{1,6})?") && new BigDecimal(text).signum() > 0) {
                masses.add(new StatedMass(new BigDecimal(text), unit));
            } else {
                findings.add(Finding.error("masses[%d]".formatted(i), text, words().notANumber()));
            }
        }
        if (!findings.isEmpty()) {
            throw new Refusal(INVALID_VALUES, words().lookAtFields(), findings);
        }
        return masses;
    }

    /** Notes them on the day of the birth, or today where the day is not known; within the transaction that registers. */
    void record(Standing by, RegisteredLitter litter, List<@Nullable StatedMass> masses, LocalDate today) {
        var on = litter.litter().born().day().orElse(today);
        var weighed = new ArrayList<StatedCareRecord>();
        for (int i = 0; i < masses.size(); i++) {
            var mass = masses.get(i);
            if (mass != null) {
                weighed.add(weighed(numbered(litter.young(), i), on, mass));
            }
        }
        if (!weighed.isEmpty()) {
            records.recordAll(by, weighed);
        }
    }

    private String numbered(List<AnimalView> young, int place) {
        if (place >= young.size()) {
            var message = pages.words(LitterMessages.class).moreWeighedThanLiveBorn(young.size());
            throw new Refusal(
                    INVALID_VALUES, message, List.of(Finding.error("masses[%d]".formatted(place), null, message)));
        }
        return young.get(place).number();
    }

    private FrameMessages words() {
        return pages.words(FrameMessages.class);
    }

    private static StatedCareRecord weighed(String number, LocalDate on, StatedMass mass) {
        return new StatedCareRecord(
                number,
                "measures",
                on,
                null,
                null,
                null,
                null,
                mass,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
