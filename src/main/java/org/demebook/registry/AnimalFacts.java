package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.photo.Photos;
import org.demebook.photo.Subject;
import org.demebook.photo.TakenPhoto;
import org.jspecify.annotations.Nullable;

/** What the journal says of animals, and what that does to their rows. */
@ApplicationScoped
class AnimalFacts implements FactBook {
    /** The parentage as it is known now. */
    record ParentageStated(
            UUID animalId,
            @Nullable UUID damId,
            Sire sire,
            boolean removedFromDeadDam,
            @Nullable Long supersedes) implements Fact {}

    /**
     * Two of a litter came from one sac; stated of the one with the later number.
     *
     * @param kind whether they are one genome
     */
    record TwinsStated(UUID animalId, UUID twinOfId, TwinKind kind) implements Fact {}

    /** They are not twins: it was stated by mistake. */
    record TwinsWithdrawn(UUID animalId, @Nullable Long supersedes) implements Fact {}

    record SexDetermined(
            UUID animalId,
            Sex sex,
            @Nullable SexDetermination determination,
            @Nullable LocalDate determinedOn,
            @Nullable Long supersedes)
            implements Fact {
        @Override
        public @Nullable String validFrom() {
            return determinedOn == null ? null : determinedOn.toString();
        }
    }

    record AnimalDied(
            UUID animalId,
            RoughDate on,
            @Words @Nullable String cause,
            @Nullable Long supersedes) implements Fact {
        @Override
        public String validFrom() {
            return on.toString();
        }
    }

    /** It is alive: the death was reported by mistake. */
    record DeathWithdrawn(UUID animalId, @Nullable Long supersedes) implements Fact {}

    /** Birth, origin and notes as they are known now. */
    record AnimalDescribed(
            UUID animalId,
            @Nullable RoughDate born,
            Origin origin,
            @Nullable SourceCode sourceCode,
            boolean malformed,
            @Words @Nullable String notes,
            @Nullable Long supersedes)
            implements Fact {}

    /** What is known now of where it or its founders come from. */
    record LocalityClaimed(
            UUID animalId, LocalityClaim claim, @Nullable Long supersedes) implements Fact {}

    record IdentifierAdded(UUID animalId, IdentifierView identifier, UUID collectionId) implements Fact {}

    /** It carries this no longer. */
    record IdentifierEnded(UUID animalId, IdentifierView identifier) implements Fact {}

    record PhotoAdded(
            UUID photoId,
            UUID animalId,
            String sha256,
            @Words @Nullable String label,
            @Nullable LocalDate takenOn,
            int widthPixels,
            int heightPixels)
            implements Fact {
        static PhotoAdded of(UUID animalId, TakenPhoto taken) {
            return new PhotoAdded(
                    taken.photoId(),
                    animalId,
                    taken.sha256(),
                    taken.label(),
                    taken.takenOn(),
                    taken.widthPixels(),
                    taken.heightPixels());
        }

        TakenPhoto taken() {
            return new TakenPhoto(photoId, sha256, label, takenOn, widthPixels, heightPixels);
        }

        @Override
        public @Nullable String validFrom() {
            return takenOn == null ? null : takenOn.toString();
        }
    }

    record SameAnimalClaimed(
            UUID claimId,
            UUID animalId,
            UUID otherId,
            @Words @Nullable String evidence) implements Fact {}

    /** Both keepers agree: the smaller id stands for both. */
    record SameAnimalConfirmed(UUID claimId) implements Fact {}

    record SameAnimalReversed(UUID claimId) implements Fact {}

    /**
     * Its keeper left: it stands under a holder, or an owner, without a name.
     *
     * @param ownerId the same as the holder, unless it was lent
     */
    record AnimalLeftBehind(UUID animalId, UUID holderId, UUID ownerId) implements Fact {}

    @Inject
    Photos photos;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                AnimalRegistered.class,
                ParentageStated.class,
                TwinsStated.class,
                TwinsWithdrawn.class,
                SexDetermined.class,
                AnimalDied.class,
                DeathWithdrawn.class,
                AnimalDescribed.class,
                LocalityClaimed.class,
                IdentifierAdded.class,
                IdentifierEnded.class,
                PhotoAdded.class,
                SameAnimalClaimed.class,
                SameAnimalConfirmed.class,
                SameAnimalReversed.class,
                AnimalLeftBehind.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        return AnimalWords.forget(forgotten, photos);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        var populationId = entry.populationId();
        if (fact instanceof AnimalRegistered registered) {
            register(entry, registered);
        } else if (fact instanceof ParentageStated stated) {
            var animal = touched(entry, stated.animalId());
            animal.parentageSeq = entry.seq();
            animal.removedFromDeadDam = stated.removedFromDeadDam();
            animal.setParents(stated.damId(), stated.sire());
            CandidateSire.clear(populationId, animal.id);
            persistCandidates(populationId, animal.id, stated.sire());
        } else if (fact instanceof TwinsStated stated) {
            touched(entry, stated.animalId()).setTwin(entry, stated.twinOfId(), stated.kind());
            touched(entry, stated.twinOfId());
        } else if (fact instanceof TwinsWithdrawn withdrawn) {
            var animal = touched(entry, withdrawn.animalId());
            touched(entry, Objects.requireNonNull(animal.twinOfId));
            animal.setTwin(entry, null, null);
        } else if (fact instanceof SexDetermined determined) {
            determine(entry, touched(entry, determined.animalId()), determined);
        } else if (fact instanceof AnimalDied died) {
            var animal = touched(entry, died.animalId());
            animal.deathSeq = entry.seq();
            animal.setDied(died.on(), died.cause());
        } else if (fact instanceof DeathWithdrawn withdrawn) {
            var animal = touched(entry, withdrawn.animalId());
            animal.deathSeq = null;
            animal.setDied(null, null);
        } else if (fact instanceof AnimalDescribed described) {
            var animal = touched(entry, described.animalId());
            animal.descriptionSeq = entry.seq();
            animal.setBorn(described.born());
            animal.origin = described.origin();
            animal.sourceCode = described.sourceCode();
            animal.malformed = described.malformed();
            animal.notes = described.notes();
        } else if (fact instanceof LocalityClaimed claimed) {
            touched(entry, claimed.animalId()).setLocality(entry, claimed.claim());
        } else if (fact instanceof IdentifierAdded added) {
            touched(entry, added.animalId());
            identify(entry, added.animalId(), added.identifier(), added.collectionId());
        } else if (fact instanceof IdentifierEnded ended) {
            touched(entry, ended.animalId());
            if (ended.identifier().value() != null) { // or it was taken out
                Identifier.deleteById(new Identifier.Key(
                        populationId,
                        ended.animalId(),
                        ended.identifier().kind(),
                        ended.identifier().value()));
            }
        } else if (fact instanceof PhotoAdded added) {
            touched(entry, added.animalId());
            photos.add(entry, Subject.animal(added.animalId()), added.taken());
        } else if (fact instanceof SameAnimalClaimed claimed) {
            new SameAnimalClaim(entry, claimed).persist();
        } else if (fact instanceof SameAnimalConfirmed confirmed) {
            merge(entry, SameAnimalClaim.of(populationId, confirmed.claimId()));
        } else if (fact instanceof SameAnimalReversed reversed) {
            separate(entry, SameAnimalClaim.of(populationId, reversed.claimId()));
        } else if (fact instanceof AnimalLeftBehind left) {
            touched(entry, left.animalId()).setCustody(left.holderId(), null, left.ownerId());
        }
    }

    private static void register(Entry entry, AnimalRegistered registered) {
        var animal = new Animal(entry, registered.animalId(), registered.number());
        animal.setSex(registered.sex(), registered.sexDetermination());
        animal.setBorn(registered.born());
        animal.setDied(registered.died(), null);
        animal.deathSeq = registered.died() == null ? null : entry.seq();
        animal.origin = registered.origin();
        animal.sourceCode = registered.sourceCode();
        animal.setParents(registered.damId(), registered.sire());
        animal.litterId = registered.litterId();
        animal.malformed = registered.malformed();
        animal.setLocality(entry, registered.locality());
        animal.removedFromDeadDam = registered.removedFromDeadDam();
        animal.collectionId = registered.collectionId();
        animal.ownerCollectionId = registered.collectionId();
        animal.notes = registered.notes();
        animal.persist();
        persistCandidates(entry.populationId(), animal.id, registered.sire());
        for (var identifier : registered.identifiers()) {
            identify(entry, animal.id, identifier, registered.collectionId());
        }
        SerialCounter.reached(entry.populationId(), registered.number());
    }

    /** What its keeper called it is known no more once those words were taken out. */
    private static void identify(Entry entry, UUID animalId, IdentifierView identifier, UUID collectionId) {
        if (identifier.value() != null) {
            new Identifier(entry, animalId, identifier, collectionId).persist();
        }
    }

    /** Adds a determination; with the first one, what was registered before is kept as the one before it. */
    private static void determine(Entry entry, Animal animal, SexDetermined determined) {
        var hasHistory =
                !DeterminedSex.of(animal.populationId, List.of(animal.id)).isEmpty();
        if (!hasHistory && (animal.sex != Sex.UNKNOWN || animal.sexMethod != null)) {
            new DeterminedSex(animal, animal.sexSeq, animal.sex, animal.sexDetermination(), null, animal.registeredBy)
                    .persist();
        }
        new DeterminedSex(
                        animal,
                        entry.seq(),
                        determined.sex(),
                        determined.determination(),
                        determined.determinedOn(),
                        entry.actorId())
                .persist();
        animal.sexSeq = entry.seq();
        animal.setSex(determined.sex(), determined.determination());
    }

    private static void persistCandidates(UUID populationId, UUID animalId, Sire sire) {
        if (sire instanceof Sire.Candidates candidates) {
            for (var candidate : candidates.candidates()) {
                new CandidateSire(populationId, animalId, candidate).persist();
            }
        }
    }

    private static void merge(Entry entry, SameAnimalClaim claim) {
        claim.state = SameAnimalClaim.CONFIRMED;
        claim.revision = entry.seq();
        var canonicalFirst = claim.animalId.compareTo(claim.otherId) < 0;
        var canonical = canonicalFirst ? claim.animalId : claim.otherId;
        var alias = canonicalFirst ? claim.otherId : claim.animalId;
        touched(entry, canonical);
        touched(entry, alias).sameAsId = canonical;
    }

    private static void separate(Entry entry, SameAnimalClaim claim) {
        claim.state = SameAnimalClaim.REVERSED;
        claim.revision = entry.seq();
        touched(entry, claim.animalId).sameAsId = null;
        touched(entry, claim.otherId).sameAsId = null;
    }

    private static Animal touched(Entry entry, UUID animalId) {
        var animal = Animal.of(entry.populationId(), animalId);
        animal.revision = entry.seq();
        return animal;
    }
}
