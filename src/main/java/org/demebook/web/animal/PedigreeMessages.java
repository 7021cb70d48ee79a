package org.demebook.web.animal;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.registry.AnimalSearch;

/** Words of the pages of ancestry, of kinship and of search. */
@MessageBundle("pedigree")
public interface PedigreeMessages {
    @Message("Ancestry of {number}")
    String ancestryOf(String number);

    @Message("Generations")
    String generations();

    @Message("{animals} animals in {rows} rows, the oldest at the top; the outline says the same in words.")
    String chartDescription(int animals, int rows);

    @Message("What the signs mean")
    String legend();

    @Message("In words")
    String outline();

    @Message("female")
    String femaleSign();

    @Message("male")
    String maleSign();

    @Message("sex unknown")
    String sexUnknownSign();

    @Message("dead")
    String deadSign();

    @Message("founder, from the wild")
    String founderSign();

    @Message("the animal asked about")
    String askedSign();

    @Message("not shown")
    String withheldSign();

    @Message("unknown")
    String unknownSign();

    @Message("possible sire")
    String possibleSire();

    @Message("parents related")
    String relatedSign();

    @Message("as above")
    String asAbove();

    @Message(
            "{#when count}{#is 1}Parents of 1 animal are not shown to you.{#else}Parents of {count} animals are not shown to you.{/when} Ask their keeper to share them, or a coordinator to help.")
    String withheldSome(int count);

    @Message("Chart")
    String chart();

    @Message("Its parents are not known, or not shown to you.")
    String noAncestors();

    @Message("Is it related to mine?")
    String isItRelated();

    @Message("Kinship of {number}")
    String kinshipOf(String number);

    @Message(
            "The kinship of two animals is the inbreeding coefficient that young of the two would have. Full siblings of unrelated parents: 1/4; half siblings: 1/8.")
    String kinshipLede();

    @Message("To my living animals")
    String toMine();

    @Message("You have no other living animal.")
    String toMineNone();

    @Message("Animal")
    String otherAnimal();

    @Message("Kinship")
    String kinshipValue();

    @Message("As a fraction")
    String asFraction();

    @Message("How")
    String how();

    @Message("no common ancestor is known")
    String unrelated();

    @Message("through ancestors not shown")
    String throughAncestorsNotShown();

    @Message("{from} to {to}, by the sire")
    String rangeOf(String from, String to);

    @Message("rests on a doubtful sire")
    String restsOnDoubt();

    @Message("With another animal")
    String withAnother();

    @Message("Compute")
    String compute();

    @Message("All my animals side by side")
    String heatMap();

    @Message("Only the first 200 of your animals are in this table; ask for another by its number.")
    String moreAnimals();

    @Message("Found for \"{words}\"")
    String searchFor(String words);

    @Message("Find an animal")
    String search();

    @Message(
            "By number, or the digits in it; by transponder or mark; by your own name for it; by the label of a photograph. Press 1 to 9 to open a result.")
    String searchLede();

    @Message(
            "Nothing that is shown to you fits. Look at the number again: a mistyped one has another check character at its end. An animal that you bought and that nobody handed over to you here is claimed by the code on its sheet.")
    String nothingFound();

    @Message("Claim an animal by its code")
    String claimByCode();

    @Message
    String foundBy(AnimalSearch.By by);

    @Message("There is more; write more of it.")
    String moreFound();

    @Message("Results")
    String results();

    @Message(
            "This animal lives on another node ({node}). What its keeper let be told is all that there is here; nobody can be asked through this house yet.")
    String elsewhere(String node);

    @Message("Ancestor")
    String ancestor();
}
