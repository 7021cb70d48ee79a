package org.demebook.web.rearing;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Words of the rearing board and of care records. */
@MessageBundle("rearing")
public interface RearingMessages {
    @Message("Rearing board")
    String board();

    @Message("Born {day}")
    String bornOn(String day);

    @Message("{days} days old")
    String daysOld(int days);

    @Message("{count} alive")
    String alive(long count);

    @Message("{count} behind")
    String behindCount(long count);

    @Message("{count} may leave")
    String readyCount(long count);

    @Message(
            "No young of this litter are shown to you. Young stand here once the litter is entered and as long as they live with you.")
    String noYoung();

    @Message("All ate")
    String allAte();

    @Message("Writes a meal of today for each that has none of today yet.")
    String allAteHint();

    @Message("Weigh them all")
    String weighLitter();

    @Message("The litter")
    String litter();

    @Message("Ate")
    String ate();

    @Message("Ate with help")
    String ateWithHelp();

    @Message("Refused")
    String refusedIt();

    @Message("Shed")
    String shedIt();

    @Message("More")
    String more();

    @Message("behind")
    String behind();

    @Message("may leave")
    String mayLeave();

    @Message("sex unknown")
    String sexUnknown();

    @Message("dead")
    String dead();

    @Message("lives elsewhere")
    String notHere();

    @Message("no meal yet")
    String neverFed();

    @Message("ate {when}")
    String lastAte(String when);

    @Message("ate with help {when}")
    String lastAssisted(String when);

    @Message("refused {when}")
    String lastRefused(String when);

    @Message("{days} days ago")
    String daysAgo(int days);

    @Message("yesterday")
    String yesterday();

    @Message("today")
    String offeredToday();

    @Message("not weighed")
    String notWeighed();

    @Message("{mass} ({day})")
    String weighedOn(String mass, String day);

    @Message("Sheds")
    String sheds();

    @Message("Meals taken in a row")
    String meals();

    @Message("Last meal")
    String lastMeal();

    @Message("Mass")
    String mass();

    @Message("Place")
    String place();

    @Message("Before it leaves")
    String waitsFor();

    @Message("expected from {day}")
    String expected(String day);

    @Message("Write something else")
    String writeOther();

    @Message("Growth, and whether it may leave")
    String growth();

    @Message("Photograph of {number}")
    String photoOf(String number);

    @Message("{number}: {what}")
    String wroteOne(String number, String what);

    @Message("{count} animals: {what}")
    String wroteMany(long count, String what);

    @Message("Take back")
    String takeBack();

    @Message("Worth a second look")
    String second();

    @Message("Corrected.")
    String corrected();

    @Message("That did not reach the server. Nothing was written; tap again when there is reception.")
    String notSent();

    @Message("Nothing was written")
    String notWritten();

    @Message("Weigh the litter")
    String weighing();

    @Message("Leave out those that were not on the scales.")
    String weighingHint();

    @Message("Unit")
    String unit();

    @Message("Mass of {number}")
    String massOf(String number);

    @Message("last {mass}, {day}")
    String lastMass(String mass, String day);

    @Message("Write at least one mass.")
    String noMass();

    @Message("Look at the marked masses.")
    String lookAtMasses();

    @Message("Write down")
    String write();

    @Message("Care records")
    String records();

    @Message("Care records of {number}")
    String recordsOf(String number);

    @Message("What it says")
    String said();

    @Message("Care record")
    String recordOf();

    @Message("What happened?")
    String whatHappened();

    @Message("All")
    String allKinds();

    @Message("Nothing is written down here yet, or nothing that you see.")
    String noRecords();

    @Message("Animal")
    String animal();

    @Message("Studbook number; the animal has to live with you.")
    String animalHint();

    @Message("Say which animal this is of.")
    String sayAnimal();

    @Message("Day")
    String on();

    @Message("taken")
    String taken();

    @Message("taken with help")
    String assisted();

    @Message("refused")
    String refused();

    @Message("The meal was")
    String outcome();

    @Message("With help: teased, scented, or fed by hand.")
    String outcomeHint();

    @Message("What was offered")
    String prey();

    @Message("Mass of the prey")
    String preyMass();

    @Message("The skin came off")
    String complete();

    @Message("whole")
    String skinWhole();

    @Message("in pieces")
    String skinInPieces();

    @Message("nobody looked")
    String skinNotSaid();

    @Message("Length")
    String length();

    @Message("Measured")
    String lengthKind();

    @Message("snout to vent")
    String snoutVent();

    @Message("snout to tip of the tail")
    String total();

    @Message("The tub, rack or room, as you call it. Yours alone; it does not go with the animal.")
    String placeHint();

    @Message("What you saw")
    String text();

    @Message(
            "A note is no diagnosis: with any sign of illness see a reptile veterinarian. Reptiles can carry Salmonella: wash your hands.")
    String textHint();

    @Message("Over since")
    String endedOn();

    @Message("Leave it empty while it goes on.")
    String endedHint();

    @Message("Looked for")
    String agent();

    @Message("The virus, bacterium or parasite.")
    String agentHint();

    @Message("Method")
    String method();

    @Message("Such as RT-PCR.")
    String methodHint();

    @Message("Sample")
    String sample();

    @Message("Such as a swab or blood.")
    String sampleHint();

    @Message("Day of the sample")
    String sampledOn();

    @Message("Result")
    String result();

    @Message("negative")
    String negative();

    @Message("positive")
    String positive();

    @Message("unclear")
    String unclear();

    @Message("Number of the laboratory")
    String laboratoryReference();

    @Message("Counts until")
    String validUntil();

    @Message("Leave it empty for 180 days from the sample.")
    String validHint();

    @Message("First day")
    String from();

    @Message("Last day as planned")
    String until();

    @Message("Leave it empty for as long as the profile of the population says.")
    String untilHint();

    @Message("planned until {day}")
    String plannedUntil(String day);

    @Message("goes on")
    String goesOn();

    @Message("over since {day}")
    String endedSince(String day);

    @Message("Correct")
    String correct();

    @Message("What it said before stays in the history.")
    String correctHint();

    @Message("It is over")
    String end();

    @Message("Entered by mistake")
    String withdraw();

    @Message("It is left out of lists and of everything that is computed. To have it back you write it anew.")
    String withdrawHint();

    @Message("This was withdrawn.")
    String withdrawn();

    @Message("Somebody else wrote this; only they may correct it.")
    String notYours();

    @Message
    String kind(RecordKind kind);

    @Message
    String leaving(LeavingReason reason);
}
