package org.demebook.web.animal;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.notation.Origin;
import org.demebook.registry.LocalityClaim;
import org.demebook.registry.SexDetermination;

/** Words of the forms about animals. */
@MessageBundle("correction")
public interface CorrectionMessages {
    @Message("Save")
    String save();

    @Message("As precisely as it is known: 2026-06-27, 2026-06, 2026, before 2026-06-27, or after it.")
    String roughHint();

    @Message("A studbook number with its hyphens; empty where it is not known.")
    String numberHint();

    @Message("What is known of the sire")
    String sireKind();

    @Message("known")
    String sireKindKnown();

    @Message("not known")
    String sireKindUnknown();

    @Message("one of several males")
    String sireKindCandidates();

    @Message("none: the dam alone (parthenogenesis)")
    String sireKindNone();

    @Message("The sire, where he is known")
    String sireNumber();

    @Message("It is doubtful that he is the sire")
    String doubtfulTick();

    @Message("The males that it may be")
    String candidates();

    @Message("Male {place}")
    String candidate(int place);

    @Message("Probability, 0 to 1")
    String probability();

    @Message("What is left to 1 is a male that nobody names.")
    String probabilityHint();

    @Message("The same male sired the whole litter")
    String wholeLitter();

    @Message("It was taken from its dam after her death")
    String deadDam();

    @Message("How it was found")
    String method();

    @Message("How sure")
    String confidence();

    @Message("not said")
    String notSaid();

    @Message("Found on")
    String foundOn();

    @Message
    String sexMethod(SexDetermination.Method method);

    @Message
    String sexConfidence(SexDetermination.Confidence confidence);

    @Message("Newborn snakes are easily sexed wrong, and easily hurt: leave probing and popping to trained hands.")
    String sexCaution();

    @Message
    String originWord(Origin origin);

    @Message("Collection")
    String collection();

    @Message("Transponder")
    String transponder();

    @Message("15 digits, or 9 or 10 of an older tag.")
    String transponderHint();

    @Message("Mark, in words")
    String mark();

    @Message("What you call it")
    String ownReference();

    @Message("Yours alone: nobody else sees it.")
    String ownReferenceHint();

    @Message("More about it")
    String more();

    @Message("Empty for the locality of the population.")
    String localityHint();

    @Message("How sure is it?")
    String certainty();

    @Message
    String certaintyWord(LocalityClaim.Certainty certainty);

    @Message("Parents")
    String editParents();

    @Message("Sex")
    String editSex();

    @Message("Death")
    String editDeath();

    @Message("Birth, origin, notes")
    String editDescription();

    @Message("Transponders and marks")
    String editIdentifiers();

    @Message("Locality")
    String editLocality();

    @Message("The same animal twice")
    String editSame();

    @Message("Correct the parents")
    String changeParents();

    @Message("Say its sex")
    String changeSex();

    @Message("If others in the room are ill, or died too, see a reptile veterinarian before an animal moves.")
    String deathLede();

    @Message("Died on")
    String diedOn();

    @Message("Cause, as far as it is known")
    String cause();

    @Message("It is alive")
    String withdrawDeath();

    @Message("Its death was reported by mistake: take the report back.")
    String withdrawDeathLede();

    @Message("What it carries")
    String carries();

    @Message("Nothing is written down yet.")
    String carriesNothing();

    @Message("No longer")
    String endIdentifier();

    @Message("Add")
    String addIdentifier();

    @Message("Kind")
    String kind();

    @Message("Number or words")
    String value();

    @Message("{#when kind}{#is 'transponder'}Transponder{#is 'mark'}Mark{#else}Your name for it{/when}")
    String identifierKind(String kind);

    @Message(
            "Two records of one animal: the keeper of one claims it, the keeper of the other confirms. Both numbers stay, the older record stands for both.")
    String sameLede();

    @Message("Number of the other record")
    String otherNumber();

    @Message("How it is known")
    String evidence();

    @Message("The same transponder, the same marks on a photograph, …")
    String evidenceHint();

    @Message("Claim it")
    String claimIt();

    @Message("Confirm")
    String confirmIt();

    @Message("They are two animals")
    String reverseIt();

    @Message(
            "{#when state}{#is 'claimed'}claimed, to be confirmed by the other keeper{#is 'confirmed'}confirmed: one animal{#else}taken back: two animals{/when}")
    String claimState(String state);
}
