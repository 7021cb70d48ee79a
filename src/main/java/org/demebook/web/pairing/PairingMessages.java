package org.demebook.web.pairing;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.approach.ApproachState;
import org.demebook.planning.Hindrance;

/** Words of the pages of pairing. */
@MessageBundle("pairing")
public interface PairingMessages {
    @Message("Pairing")
    String title();

    @Message(
            "Which of your animals could breed, with whom, and what it would do to the genes of the population and to the young.")
    String lede();

    @Message("Pages of pairing")
    String ways();

    @Message("Partners")
    String partners();

    @Message("Requests")
    String requests();

    @Message("What I can bear")
    String bear();

    @Message("Put together on")
    String pairOn();

    @Message("Ages, rests and quarantine count to it.")
    String pairOnHint();

    @Message("Look")
    String look();

    @Message("Whose partner?")
    String yours();

    @Message("Choose one of your animals. Those that carry genes which few others carry stand first.")
    String yoursHint();

    @Message("No living animal is in a collection of yours. Register one, or claim one that was handed to you.")
    String noAnimals();

    @Message("Females")
    String females();

    @Message("Males")
    String males();

    @Message("No female of yours may be paired on this day.")
    String noneFemale();

    @Message("No male of yours may be paired on this day.")
    String noneMale();

    @Message("mean kinship {value}")
    String meanKinshipOf(String value);

    @Message("And {count} more: partners for them are on their own pages.")
    String more(int count);

    @Message("rare genes")
    String rare();

    @Message("Not on this day: {count}")
    String unable(int count);

    @Message(
            "{#if count == 1}One animal has no known sex: once it is determined, partners can be looked for.{#else}{count} animals have no known sex: once it is determined, partners can be looked for.{/if}")
    String unsexed(int count);

    @Message("Pairs worth a look")
    String suggested();

    @Message(
            "With one animal of yours and one of another collection. Each pair is looked at by itself; what is best for a whole season is planned as one.")
    String suggestedYours();

    @Message(
            "Of all animals that you may see. Each pair is looked at by itself; what is best for a whole season is planned as one.")
    String suggestedAll();

    @Message(
            "No pair is to be had on this day, of what you may see. Choose a later day, or look at a single animal to read why.")
    String noneSuggested();

    @Message("Dam × sire")
    String pair();

    @Message("F of the young")
    String inbreeding();

    @Message("Keep")
    String keep();

    @Message("Gene diversity")
    String geneDiversityAfter();

    @Message("{before} → {after}")
    String fromTo(String before, String after);

    @Message("Partners for {number}")
    String otherPartners(String number);

    @Message("Further")
    String actions();

    @Message("How your animals are related")
    String mapOf();

    @Message("Kinship, each with each")
    String map();

    @Message(
            "Each of your living animals with each other; the stronger the colour, the more closely related. 1/4 is what full siblings, or parent and young, have; 1/8 half siblings.")
    String mapShows();

    @Message("There are no animals to compare.")
    String mapNothing();

    @Message("As a table")
    String asTable();

    @Message("Kinship")
    String kinship();

    @Message("Animal")
    String animal();

    @Message("withheld")
    String withheld();

    @Message("Some of these figures rest on ancestors that are granted to be computed with, and not to be seen.")
    String notShown();

    @Message("Partners for {number}")
    String partnersFor(String number);

    @Message(
            "Two figures, never one score: how inbred the young would be, and how much gene diversity the population has afterwards.")
    String partnersLede();

    @Message("No young more inbred than")
    String limit();

    @Message("1/4: full siblings; 1/8: half siblings.")
    String limitHint();

    @Message("Look at keeping up to")
    String young();

    @Message("Young of one litter. Empty: 8.")
    String youngHint();

    @Message("Its mean kinship is {kinship}, of all animals {all}.")
    String ownLine(String kinship, String all);

    @Message("It carries genes that are rare in the population.")
    String ownRare();

    @Message("Gene diversity of the population is {diversity} now.")
    String poolNow(String diversity);

    @Message("Whichever of the two travels arrives by {day}: {quarantine} days of quarantine before {pairOn}.")
    String arriveBy(String day, int quarantine, String pairOn);

    @Message(
            "An animal that arrives today would still be in quarantine ({quarantine} days) on {pairOn}. Pair animals that live together, or choose a later day.")
    String tooLate(int quarantine, String pairOn);

    @Message("{#if count == 1}One partner{#else}{count} partners{/if}, the best first")
    String found(int count);

    @Message(
            "No partner is to be had, of the animals that you may see. Below stands why not; a later day or a higher limit may help, and so may partners that their keepers do not show.")
    String noneFound();

    @Message("yours")
    String yoursToo();

    @Message("not related, as far as is known")
    String unrelated();

    @Message("at worst {value}")
    String worst(String value);

    @Message("{low} to {high}, by which of several sires it is")
    String range(String low, String high);

    @Message("young to keep")
    String toKeep();

    @Message("keep none: each would lower gene diversity")
    String toKeepNone();

    @Message("from {young} on it falls below today’s")
    String toKeepFalls(int young);

    @Message("gene diversity")
    String gain();

    @Message("mean kinship")
    String meanKinship();

    @Message("of its ancestry known")
    String knownAncestry();

    @Message("It may be closer to the others than it looks.")
    String gaps();

    @Message("The figures take doubtful sires as true, those of {numbers}. A DNA test would tell.")
    String doubtful(String numbers);

    @Message("By the number of young kept")
    String byYoung();

    @Message("Young kept")
    String youngKept();

    @Message("Plan a season with this pair")
    String planWith();

    @Message("Show all")
    String showAll();

    @Message("Not proposed, and why: {count}")
    String excluded(int count);

    @Message("Why")
    String why();

    @Message("Partners that their keepers do not show")
    String unnamed();

    @Message(
            "Some keepers let their animals be computed with and not be seen. At most five that would suit are told, by names that mean nothing; through the house you can ask their keepers, and neither of you learns who the other is until both want it.")
    String unnamedLede();

    @Message("Look for them")
    String unnamedLook();

    @Message("Unnamed partners for {number}")
    String unnamedFor(String number);

    @Message("Nobody is to be asked at the moment.")
    String unnamedNone();

    @Message("Which of them?")
    String unnamedWhich();

    @Message("In no order of merit. In this calendar month the answer stays the same.")
    String unnamedWhichHint();

    @Message("Your words to its keeper")
    String words();

    @Message(
            "They learn which animal of theirs is wanted and read this, and nothing else of you: write only what they may know before they agree.")
    String wordsHint();

    @Message(
            "By asking you consent: if they agree, both sides may read number, collection and keepers of the other animal for twelve months. You can take it back at any time. In thirty days two requests for an animal may be made, and five by a household.")
    String consentAsk();

    @Message("Ask its keeper")
    String ask();

    @Message(
            "Keepers who do not know of each other ask through the house. Nobody learns who the other is until both agree.")
    String requestsLede();

    @Message("Waiting for your answer")
    String waiting();

    @Message("The others, the latest first")
    String others();

    @Message(
            "Nobody has asked you, and you have asked nobody. Look for partners of one of your animals; at the end of that page stands the way to those that nobody shows.")
    String noRequests();

    @Message("{number} is wanted as a partner")
    String wanted(String number);

    @Message("{pseudonym} asked for {number}")
    String askedFor(String number, String pseudonym);

    @Message("asked on {day}")
    String proposedOn(String day);

    @Message("Older ones")
    String older();

    @Message("Request")
    String request();

    @Message("Your animal")
    String yourAnimal();

    @Message("The other animal")
    String theirAnimal();

    @Message("told when both agree")
    String notTold();

    @Message("Lives in")
    String theirCollection();

    @Message("Kept by")
    String theirKeepers();

    @Message("State")
    String stateIs();

    @Message("Asked on")
    String askedOn();

    @Message("May be answered until")
    String openUntil();

    @Message("Agreed until")
    String agreedUntil();

    @Message("Their words")
    String theirWords();

    @Message("Your words")
    String yourWords();

    @Message("What the two would come to")
    String pairTitle();

    @Message("Known ancestry of the young")
    String knownShare();

    @Message(
            "By agreeing you consent: for twelve months both sides may read number, collection and keepers of the other animal, and the kinship of the pair. You find it among what you share, and can take it back at any time.")
    String consentAgree();

    @Message("Agree")
    String agree();

    @Message("Refuse")
    String refuse();

    @Message("If you refuse, the other side is not told: after thirty days they read that nobody agreed.")
    String refuseHint();

    @Message("Take the request back")
    String withdrawAsked();

    @Message("End the agreement")
    String withdrawAgreed();

    @Message("What the agreement let both sides read is withdrawn on both sides.")
    String withdrawHint();

    @Message(
            "Now you know whose the other animal is: write to them, agree on who travels, on tests and on quarantine. Ask your authority before an animal crosses a border, and a reptile veterinarian if one of the two is not well.")
    String nextSteps();

    @Message("Partners for {number}")
    String partnersOf(String number);

    @Message("What my collections can bear")
    String termsTitle();

    @Message("In the coming season: how many litters, how far animals travel. Nobody else reads it; plans keep to it.")
    String termsLede();

    @Message("You have no collection in this population yet. Open one to register animals in it.")
    String noCollections();

    @Message("nothing stated")
    String notStated();

    @Message("stated on {day}")
    String statedOn(String day);

    @Message("Change")
    String change();

    @Message("State it")
    String stateIt();

    @Message("What {label} can bear")
    String termsOf(String label);

    @Message("Litters at most")
    String littersAtMost();

    @Message("That may be born there: room for their young. Empty: no limit.")
    String littersAtMostHint();

    @Message("Males away at most")
    String malesAway();

    @Message("Of this collection, at the same time. Empty: no limit.")
    String malesAwayHint();

    @Message("Farthest way in kilometres")
    String farthest();

    @Message("To or from another region, as the association states distances. Empty: no limit.")
    String farthestHint();

    @Message("May animals cross a border?")
    String borders();

    @Message("Where a permit is needed. Permits differ by place: ask your authority.")
    String bordersHint();

    @Message("Nothing said")
    String notSaid();

    @Message("Animals go to and come from")
    String exchange();

    @Message("any region")
    String anyRegion();

    @Message("these regions alone, and the own")
    String onlyThese();

    @Message("Regions")
    String regions();

    @Message("They count where these alone are chosen; none ticked: none but the own.")
    String regionsHint();

    @Message("This population has fixed no regions, so ways are not known.")
    String noRegions();

    @Message("Notes")
    String notes();

    @Message("For those who act for this collection.")
    String notesHint();

    @Message(
            "By stating this you consent that plans count the animals of this collection as living together. You may withdraw it at any time.")
    String consentTerms();

    @Message("Withdraw what is stated")
    String withdrawTerms();

    @Message("Plans take it into account no longer.")
    String withdrawTermsHint();

    @Message("{number} km")
    String kilometres(String number);

    @Message("no limit")
    String noLimit();

    @Message("none but the own")
    String ownAlone();

    @Message
    String hindrance(Hindrance hindrance);

    @Message
    String state(ApproachState state);
}
