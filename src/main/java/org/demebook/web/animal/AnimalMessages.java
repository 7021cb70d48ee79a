package org.demebook.web.animal;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Recipient;
import org.demebook.diary.CareRecord;
import org.demebook.problem.Finding;

/** Words of the pages of animals. */
@MessageBundle("animal")
public interface AnimalMessages {
    @Message("Animals")
    String animals();

    @Message("Mine")
    String mine();

    @Message("All that I may see")
    String all();

    @Message("Which ones")
    String filter();

    @Message("Show")
    String show();

    @Message("Living")
    String living();

    @Message("Dead")
    String dead();

    @Message("Living and dead")
    String livingAndDead();

    @Message("Any sex")
    String anySex();

    @Message("None of your animals is like that. Register one, or bring your list in by Import.")
    String noneMine();

    @Message("No animal like that is shown to you. What their keepers do not share is not in this list.")
    String noneSeen();

    @Message("Register an animal")
    String register();

    @Message("A founder, or an animal from outside. Young of a litter are registered with their litter.")
    String registerLede();

    @Message("Register")
    String registerIt();

    @Message("Number")
    String number();

    @Message("Animal")
    String animal();

    @Message("Sex")
    String sex();

    @Message("Born")
    String born();

    @Message("Dam × sire")
    String damAndSire();

    @Message("Died")
    String died();

    @Message("Dam")
    String dam();

    @Message("Sire")
    String sire();

    @Message("Origin")
    String origin();

    @Message("CITES source code")
    String source();

    @Message("Lives in")
    String livesIn();

    @Message("Owner")
    String owner();

    @Message("another collection (a breeding loan)")
    String ownerOther();

    @Message("{label} (yours)")
    String ownCollection(String label);

    @Message("a collection of somebody else")
    String otherCollection();

    @Message("nowhere at present: it is in a transfer")
    String noCollection();

    @Message("Litter")
    String litter();

    @Message("the litter that it was born in")
    String itsLitter();

    @Message("Twin of")
    String twins();

    @Message("Notes")
    String notes();

    @Message("Malformed at birth")
    String malformed();

    @Message("alive")
    String isAlive();

    @Message("dead")
    String isDead();

    @Message("State")
    String aliveOrDead();

    @Message("{#when years}{#is 1}1 year{#else}{years} years{/when}")
    String years(int years);

    @Message("{#when months}{#is 1}1 month{#else}{months} months{/when}")
    String months(int months);

    @Message("{#when days}{#is 1}1 day{#else}{days} days{/when}")
    String days(long days);

    @Message("about {age}")
    String about(String age);

    @Message("not known")
    String unknown();

    @Message("not shown to you")
    String notShown();

    @Message("none")
    String none();

    @Message("none: the dam alone (parthenogenesis)")
    String sireNone();

    @Message("doubtful")
    String sireDoubtful();

    @Message("one of:")
    String sireOneOf();

    @Message("the same for the whole litter")
    String sireLitter();

    @Message("Identity")
    String identity();

    @Message("What its keeper does not share with you is not on this page.")
    String others();

    @Message("This animal")
    String overview();

    @Message("Ancestry")
    String ancestry();

    @Message("Kinship")
    String kinship();

    @Message("Care records")
    String careRecords();

    @Message("Breeding")
    String breeding();

    @Message("Hand it over")
    String handOver();

    @Message("Find a partner")
    String pair();

    @Message("Correct or add")
    String change();

    @Message("Hand-over sheet")
    String sheets();

    @Message("It is with me: report where it is")
    String withMe();

    @Message("Pages of this animal")
    String pages();

    @Message("This record and another were found to be one animal. The number that stands for it:")
    String mergedInto();

    @Message("It is in a transfer.")
    String inTransfer();

    @Message("Look at the transfer")
    String seeTransfer();

    @Message("Where it comes from")
    String comesFrom();

    @Message("Inbreeding (F)")
    String inbreeding();

    @Message("from {from} to {to}, depending on the sire")
    String inbreedingRange(String from, String to);

    @Message("{value} if all unknown parents were full siblings")
    String inbreedingWorst(String value);

    @Message("{value} if the doubtful sires were unknown")
    String inbreedingDoubt(String value);

    @Message("of its genes trace to stated founders")
    String knownAncestryLabel();

    @Message("Founders")
    String founders();

    @Message("Share of its genes")
    String foundersShare();

    @Message("of nobody named")
    String unnamedShare();

    @Message("No founder of it is known or shown.")
    String foundersNone();

    @Message("It is a founder: taken from the wild.")
    String isFounder();

    @Message("These figures also rest on ancestors that are not shown to you; their keepers let them be computed with.")
    String throughNotShown();

    @Message("Unknown parents count as unrelated, which makes the figure smaller than it may be.")
    String convention();

    @Message("See the ancestry")
    String seeAncestry();

    @Message("Locality")
    String locality();

    @Message("Young")
    String young();

    @Message("No young of it is registered, or none is shown to you.")
    String youngNone();

    @Message("with")
    String with();

    @Message("perhaps")
    String perhaps();

    @Message("{#when count}{#is 1}1 young{#else}{count} young{/when}")
    String youngCount(int count);

    @Message("Photographs")
    String photos();

    @Message("No photograph yet. Take one after a shed, from above.")
    String photosNone();

    @Message("Add a photograph")
    String addPhoto();

    @Message("Picture")
    String photo();

    @Message("JPEG or PNG, up to 20 MB. Place, camera and every hidden text are taken out before it is kept.")
    String photoHint();

    @Message("Choose a picture.")
    String photoMissing();

    @Message("Label")
    String label();

    @Message("Such as \"head from above\"; it can be searched for.")
    String labelHint();

    @Message("Taken on")
    String takenOn();

    @Message("Photograph of {number}")
    String photoOf(String number);

    @Message("Findings")
    String findings();

    @Message("Nothing about it stands out.")
    String findingsNone();

    @Message("Likelier wrong:")
    String likelier();

    @Message("Leave it as it is")
    String leave();

    @Message("How do you know?")
    String leaveReason();

    @Message("Left as it is")
    String left();

    @Message("since {day}")
    String leftOn(String day);

    @Message("by you")
    String byYou();

    @Message
    String level(Finding.Level level);

    @Message("Ready to leave?")
    String readiness();

    @Message("ready to leave")
    String readyYes();

    @Message("not ready yet")
    String readyNo();

    @Message("not known")
    String readyUnknown();

    @Message("met")
    String met();

    @Message("not met")
    String notMet();

    @Message("Expected from {day}.")
    String expectedFrom(String day);

    @Message(
            "{#when name}{#is 'age'}age{#is 'sheds'}sheds{#is 'meals'}meals{#is 'last-meal'}last meal{#is 'mass'}mass{#is 'health'}health{#is 'sex'}sex{#is 'photograph'}photograph{#else}{name}{/when}")
    String condition(String name);

    @Message("Tests that count")
    String tests();

    @Message("No test is written down. Test before a pairing and after an arrival.")
    String testsNone();

    @Message("counts until {day}")
    String countsUntil(String day);

    @Message("counted until {day}")
    String countedUntil(String day);

    @Message
    String testResult(CareRecord.HealthTest.Result result);

    @Message("Breeding hold")
    String hold();

    @Message("on hold: not to be bred for now")
    String onHold();

    @Message("not on hold")
    String notOnHold();

    @Message(
            "{#when basis}{#is 'no-sire'}It has no sire, so it carries nothing that its dam lacks.{#is 'locality'}It, or an ancestor, is of another locality or of none that is sure.{#is 'stated'}Its holder or a coordinator said so.{#is 'lifted'}A hold was lifted.{#else}{basis}{/when}")
    String holdBasis(String basis);

    @Message("Set it on hold")
    String setHold();

    @Message("Lift the hold")
    String liftHold();

    @Message("An animal on hold is not proposed as a partner. Set by its holder or a coordinator; the last word holds.")
    String holdLede();

    @Message("Reason")
    String reason();

    @Message("For its holder and for coordinators.")
    String reasonHint();

    @Message("Who may see what of it")
    String sharing();

    @Message("Nobody but you and your household sees anything of it.")
    String sharedNothing();

    @Message("until {day}")
    String sharedUntil(String day);

    @Message("Change what you share")
    String changeSharing();

    @Message("this animal alone")
    String thisAnimalAlone();

    @Message
    String recipient(Recipient.Kind kind);

    @Message
    String fieldGroup(FieldGroup group);

    @Message("computed with, not shown")
    String computedOnly();

    @Message("born {day}")
    String bornOn(String day);

    @Message("What is written down of it, along time")
    String lifeCaption();

    @Message("Mass by age")
    String growthCaption();

    @Message("Masses along time")
    String massesCaption();

    @Message("Day")
    String day();

    @Message("Its life")
    String life();

    @Message("What happened to it along time, a line for each kind; the list says the same.")
    String lifeDescription();

    @Message("As a list")
    String asList();

    @Message("Nothing is written down of it that you may see.")
    String lifeNothing();

    @Message("Meals, sheds and masses are shown to whoever holds it or wrote of it.")
    String lifeNotYours();

    @Message("{#when count}{#is 1}once{#else}{count} times{/when}")
    String times(int count);

    @Message("Birth and death")
    String laneBirth();

    @Message("Sheds")
    String laneSheds();

    @Message("Meals")
    String laneMeals();

    @Message("Masses")
    String laneMasses();

    @Message("Young")
    String laneYoung();

    @Message("Together with")
    String laneTogether();

    @Message("Health")
    String laneHealth();

    @Message("Moves")
    String laneMoves();

    @Message("shed, whole")
    String shedWhole();

    @Message("shed, in pieces")
    String shedPieces();

    @Message("shed")
    String shedPlain();

    @Message("born")
    String eventBorn();

    @Message("died")
    String eventDied();

    @Message("{agent}: {result}")
    String eventTest(String agent, String result);

    @Message("quarantine")
    String eventQuarantine();

    @Message("to {place}")
    String eventMove(String place);

    @Message("How it gains")
    String growth();

    @Message("Its masses by age, within what its littermates weighed.")
    String growthDescription();

    @Message("What it weighed, along time.")
    String massesDescription();

    @Message("It was never weighed.")
    String growthNothing();

    @Message("Age in days")
    String ageDays();

    @Message("Mass in {unit}")
    String massIn(String unit);

    @Message("littermates")
    String littermates();

    @Message("not weighed")
    String notWeighed();

    @Message("{mass} a week")
    String perWeek(String mass);
}
