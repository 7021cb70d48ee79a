package org.demebook.web.litter;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.demebook.gestation.Grade;
import org.demebook.litter.LitterVersionView;
import org.demebook.litter.LitterView;
import org.demebook.notation.Sex;
import org.demebook.photo.Moment;
import org.demebook.photo.PhotoView;
import org.demebook.problem.Finding;
import org.demebook.reading.LitterReading;
import org.demebook.registry.LeftFindings.LeftView;
import org.demebook.registry.TwinKind;
import org.jspecify.annotations.Nullable;

/**
 * All that is told of a litter.
 *
 * @param own whether the one who looks may correct it
 * @param mates the males that its dam met, the likeliest first; for who registered it
 * @param findings what is strained about it now; for who registered it
 * @param left what was left as it is; for the same
 */
public record LitterStory(
        LitterView litter,
        boolean own,
        LitterReading reading,
        List<Young> young,
        List<Met> mates,
        List<Finding> findings,
        List<LeftView> left,
        List<LitterVersionView> versions,
        List<PhotoView> photos) {

    /**
     * One of the live-born.
     *
     * @param seen whether anything of it is shown to the one who looks, beside its number
     * @param reference what its keeper calls it
     */
    public record Young(
            String number,
            boolean seen,
            @Nullable Sex sex,
            boolean alive,
            @Nullable String reference,
            @Nullable BigDecimal grams,
            @Nullable LocalDate weighedOn) {
        static Young unseen(String number) {
            return new Young(number, false, null, true, null, null, null);
        }
    }

    /** A male that the dam met. */
    public record Met(String male, LocalDate lastMetOn, Grade grade, BigDecimal share) {}

    public Ova getOva() {
        return Ova.of(litter);
    }

    /** Of its page, below that of the population. */
    public String getAddress() {
        return "litters/" + litter.id();
    }

    public List<Moment> getMoments() {
        return List.of(Moment.values());
    }

    public List<TwinKind> getTwinKinds() {
        return List.of(TwinKind.values());
    }

    public boolean isSeveralYoung() {
        return litter.young().size() > 1;
    }

    public boolean isCorrected() {
        return versions.size() > 1;
    }
}
