package org.demebook.approach;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.approach.ApproachView.PairFigures;
import org.demebook.approach.ApproachView.Theirs;
import org.demebook.approach.ApproachView.Yours;
import org.demebook.consent.Action;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.consent.Subject;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Sex;
import org.demebook.registry.Custody;
import org.jspecify.annotations.Nullable;

/** Shows approaches to one of their sides: of the other side's animal, while both agree, what is granted, and nothing before. */
@ApplicationScoped
class ApproachViews {
    @Inject
    Situations situations;

    @Inject
    Ancestries ancestries;

    @Inject
    Consents consents;

    @Inject
    Keepers keepers;

    @Inject
    Clock clock;

    /** What one asker may see of agreements, and the pedigree that their figures rest on. */
    private record Sight(Standing by, Lens lens, Snapshot pedigree) {}

    /** With all that an agreement shows; that it was shown is told to the other side. Computes outside of any transaction. */
    List<ApproachView> of(Standing by, List<Approach> approaches, Set<UUID> own) {
        var situation = situations.of(by, approaches);
        var at = clock.instant();
        @Nullable Sight sight = null;
        var views = new ArrayList<ApproachView>();
        for (var approach : approaches) {
            var side = Objects.requireNonNull(approach.sideOf(own));
            var state = situation.state(approach, side);
            if (state == ApproachState.AGREED && sight == null) {
                sight = new Sight(
                        by,
                        consents.lens(by, Purpose.PAIRING_COMPUTATION, at),
                        ancestries.seen(by, Purpose.PAIRING_COMPUTATION, at));
            }
            var yours = situation.animal(approach, side);
            var unnamed = unnamed(approach, side, yours);
            if (state == ApproachState.AGREED && sight != null) {
                var theirs = situation.animal(
                        approach, side == ApproachSide.ASKING ? ApproachSide.ASKED : ApproachSide.ASKING);
                views.add(view(
                        approach, side, state, yours, granted(sight, unnamed, theirs), pair(sight, yours, theirs)));
            } else {
                views.add(view(approach, side, state, yours, unnamed, null));
            }
        }
        if (sight != null) {
            consents.disclosed(sight.lens());
        }
        return views;
    }

    /** What became of it, and nothing of the other side: for an answer that is kept, and that no withdrawal reaches. */
    ApproachView told(Approach approach, Custody yours, ApproachSide side, ApproachState state) {
        return view(approach, side, state, yours, unnamed(approach, side, yours), null);
    }

    private static ApproachView view(
            Approach approach,
            ApproachSide side,
            ApproachState state,
            Custody yours,
            Theirs theirs,
            @Nullable PairFigures pair) {
        return new ApproachView(
                approach.id,
                side,
                state,
                approach.proposedOn,
                approach.openUntil(),
                approach.agreedUntil(),
                new Yours(yours.number(), yours.sex()),
                theirs,
                approach.words,
                pair);
    }

    /** What its keeper has not agreed to show more of: the sex says no more than that a partner was looked for. */
    private static Theirs unnamed(Approach approach, ApproachSide side, Custody yours) {
        return new Theirs(
                side == ApproachSide.ASKING ? approach.partnerPseudonym : approach.pseudonym,
                opposite(yours.sex()),
                null,
                null,
                List.of());
    }

    private Theirs granted(Sight sight, Theirs theirs, Custody animal) {
        var subject = subject(animal);
        boolean number = sight.lens().may(subject, FieldGroup.IDENTITY, Action.READ);
        boolean whereabouts = sight.lens().may(subject, FieldGroup.CUSTODY, Action.READ);
        var populationId = sight.by().populationId();
        var collectionId = Objects.requireNonNull(animal.collectionId());
        return new Theirs(
                theirs.pseudonym(),
                theirs.sex(),
                number ? animal.number() : null,
                whereabouts ? keepers.label(populationId, collectionId) : null,
                whereabouts ? keepers.namesOf(populationId, collectionId) : List.of());
    }

    /** Absent where the reader may not have both animals computed with. */
    private static @Nullable PairFigures pair(Sight sight, Custody yours, Custody theirs) {
        var snapshot = sight.pedigree();
        int row = snapshot.row(yours.id());
        int other = snapshot.row(theirs.id());
        if (row == Pedigree.UNKNOWN || other == Pedigree.UNKNOWN || !snapshot.countsParentage(other)) {
            return null;
        }
        // that it was computed with is told to its keepers like that it was read
        if (!sight.lens().may(subject(theirs), FieldGroup.PARENTAGE, Action.COMPUTE)) {
            sight.lens().may(subject(theirs), FieldGroup.PARENTAGE, Action.READ);
        }
        var pedigree = snapshot.pedigree();
        return new PairFigures(
                pedigree.kinship(row, other),
                (pedigree.knownFraction(row) + pedigree.knownFraction(other)) / 2,
                pedigree.convention().name().toLowerCase(Locale.ROOT),
                snapshot.restsOnWhatIsNotShown(row, other) ? true : null);
    }

    private static Subject subject(Custody animal) {
        return Subject.of(animal.id(), animal.collectionId(), animal.ownerCollectionId());
    }

    private static Sex opposite(Sex sex) {
        return switch (sex) {
            case FEMALE -> Sex.MALE;
            case MALE -> Sex.FEMALE;
            case UNKNOWN -> Sex.UNKNOWN;
        };
    }
}
