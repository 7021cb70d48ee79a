package org.demebook.web.litter;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.notation.Origin;
import org.demebook.photo.Moment;
import org.demebook.reading.FatherlessSigns;
import org.demebook.reading.LossReading;
import org.demebook.registry.TwinKind;

/** Words of the pages of litters. */
@MessageBundle("litter")
public interface LitterMessages {
    @Message("Litters")
    String litters();

    @Message("Enter a litter")
    String enter();

    @Message("Young awaited")
    String awaited();

    @Message(
            "No young are awaited. Note who is together, an ovulation, or the shed that follows it, and the days are told here.")
    String nothingAwaited();

    @Message("Pairs and breeding signs")
    String breedingLink();

    @Message("Born")
    String born();

    @Message("Litters that were born")
    String bornLitters();

    @Message("No litter yet. Enter one as soon as it is found; numbers are given at once.")
    String noLitters();

    @Message("Earlier litters")
    String earlier();

    @Message("Latest litters")
    String latest();

    @Message("Dam")
    String dam();

    @Message("Sire")
    String sire();

    @Message("unknown")
    String sireUnknown();

    @Message("none: the dam alone")
    String sireNone();

    @Message("one of several")
    String sireCandidates();

    @Message("in doubt")
    String sireDoubtful();

    @Message("One male sired all of them.")
    String sireOfAll();

    @Message("Found")
    String found();

    @Message("Everything that came, counted before it is sorted: young, dead ones, slugs.")
    String foundHint();

    @Message("Live-born")
    String liveBorn();

    @Message("of them malformed")
    String malformedLive();

    @Message("Stillborn")
    String stillborn();

    @Message("Full-term and dead, in or out of the sac")
    String stillbornHint();

    @Message("of them malformed")
    String malformedStillborn();

    @Message("Part-developed")
    String partDeveloped();

    @Message("An embryo is seen, not full-term, dead")
    String partDevelopedHint();

    @Message("Slugs")
    String unfertilised();

    @Message("No embryo is seen")
    String unfertilisedHint();

    @Message("of them infertile")
    String infertile();

    @Message("of them early dead")
    String earlyDead();

    @Message("With veins, for instance")
    String earlyDeadHint();

    @Message("What was found")
    String counts();

    @Message("Details of the counts")
    String which();

    @Message("One more: {what}")
    String oneMore(String what);

    @Message("One less: {what}")
    String oneLess(String what);

    @Message("Count all of it first; then sort.")
    String tieCount();

    @Message("# still to sort")
    String tieLeft();

    @Message("One missing: which?")
    String tieOneMissing();

    @Message("# missing: which?")
    String tieMissing();

    @Message("One too many: which?")
    String tieOneOver();

    @Message("# too many: which?")
    String tieOver();

    @Message("It adds up: #")
    String tieAdds();

    @Message("Whose litter?")
    String whose();

    @Message("Another female")
    String otherFemale();

    @Message("Choose a female")
    String chooseFemale();

    @Message("You hold no other living female.")
    String noFemales();

    @Message("The day is not known exactly")
    String dayRough();

    @Message("A month (2026-06), a year (2026), or before or after a day: ../2026-06-29")
    String roughHint();

    @Message("Sire")
    String whoSired();

    @Message("From the males that she met")
    String sireWorkedOut();

    @Message("The introductions and the days tell it.")
    String sireWorkedOutHint();

    @Message("This one")
    String sireKnown();

    @Message("Number of the sire")
    String sireNumber();

    @Message("Unknown")
    String sireNotKnown();

    @Message("None: no male had a part in it")
    String sireNobody();

    @Message("One male sired the whole litter")
    String sireWholeLitter();

    @Message("still together")
    String still();

    @Message("Weigh and sex them now")
    String oneByOne();

    @Message("It can wait: numbers are given first, masses are written down on the rearing board as well.")
    String oneByOneHint();

    @Message("Rows for each of the live-born come when their count is set.")
    String oneByOneAfter();

    @Message("Sex")
    String sex();

    @Message("Your name for it")
    String reference();

    @Message("Mass")
    String mass();

    @Message("More masses than live-born: {liveBorn} were live-born.")
    String moreWeighedThanLiveBorn(int liveBorn);

    @Message("More about it")
    String more();

    @Message("Notes")
    String notes();

    @Message("Origin of the young")
    String originOf();

    @Message("Unknown for a dam that was taken from the wild gravid.")
    String originHint();

    @Message("The young go to")
    String toCollection();

    @Message("The collection of the dam")
    String collectionOfDam();

    @Message("Register the litter")
    String register();

    @Message(
            "This litter was sent before, in an earlier wording, and is registered. Look at it and correct it there; then throw this draft away.")
    String sentBefore();

    @Message("Look at the litters")
    String lookAtLitters();

    @Message(
            "If she still strains, is weak, or you feel something held back: see a reptile veterinarian. Wash your hands: reptiles can carry Salmonella.")
    String vetEntry();

    @Message("Litter of {dam}, {day}")
    String title(String dam, String day);

    @Message("Rearing board")
    String rearing();

    @Message("Correct what was found")
    String correct();

    @Message("{days} days after the post-ovulation shed")
    String daysFromShed(int days);

    @Message("Parents")
    String parents();

    @Message("Males that she met")
    String metBefore();

    @Message("Last together")
    String lastMet();

    @Message("Share")
    String share();

    @Message("Shares are common practice, no source; a DNA test decides.")
    String shareHint();

    @Message("Origin")
    String origin();

    @Message("Young")
    String young();

    @Message("None was live-born.")
    String noYoung();

    @Message("alive")
    String alive();

    @Message("dead")
    String dead();

    @Message("not shown to you")
    String notShown();

    @Message("Number")
    String number();

    @Message("Within chance?")
    String reading();

    @Message("Nothing was lost.")
    String nothingLost();

    @Message("Worth checking")
    String worthChecking();

    @Message("Worth a second look")
    String findings();

    @Message("Nothing stands out.")
    String noFindings();

    @Message("Left as it is")
    String left();

    @Message("Why it matters")
    String why();

    @Message("Likelier")
    String likelier();

    @Message("Fatherless young?")
    String fatherless();

    @Message("Say what you know")
    String fatherlessSay();

    @Message("She met no male in the 24 months before")
    String noMale();

    @Message("Every young shows recessives of the dam alone")
    String onlyRecessives();

    @Message("Look again")
    String lookAgain();

    @Message("To take it so, correct the sire of each young to none, on its page.")
    String fatherlessHow();

    @Message("Twins")
    String twins();

    @Message("No two are stated to have come from one sac.")
    String noTwins();

    @Message("State twins")
    String stateTwins();

    @Message("One")
    String first();

    @Message("The other")
    String second();

    @Message("Take back")
    String takeBack();

    @Message("Photographs")
    String photos();

    @Message("No photograph yet. One before the litter is taken apart shows what was found.")
    String noPhotos();

    @Message("Add a photograph")
    String addPhoto();

    @Message("Picture")
    String photo();

    @Message("JPEG or PNG, at most 20 MB. Place and camera data are taken out before it is kept.")
    String photoHint();

    @Message("Choose a picture.")
    String choosePhoto();

    @Message("At most 100 characters.")
    String labelTooLong();

    @Message("When")
    String moment();

    @Message("What it shows")
    String label();

    @Message("Taken on")
    String takenOn();

    @Message("What was stated, and when")
    String versions();

    @Message("first")
    String versionFirst();

    @Message("now")
    String versionNow();

    @Message("Stated")
    String stated();

    @Message("Correct what {dam} bore")
    String correctTitle(String dam);

    @Message(
            "The first statement stays to be seen. More live-born get numbers of their own. One that died since is no correction: say so on its page.")
    String correctLede();

    @Message("Save the correction")
    String save();

    @Message("Back to the litter")
    String back();

    @Message("No reception")
    String offlineTitle();

    @Message("This page is not kept on the device. These are:")
    String offlineLede();

    @Message("Enter a litter: it is kept here and sent when there is reception")
    String offlineEntry();

    @Message("Awaited young and litters, as they were last seen")
    String offlineList();

    @Message("1 litter waits on this device.")
    String unsentOne();

    @Message("# litters wait on this device.")
    String unsentMany();

    @Message("Look at it")
    String unsentLook();

    @Message("Not sent yet")
    String unsentTitle();

    @Message("Send now")
    String unsentSend();

    @Message("Open")
    String unsentOpen();

    @Message("Throw away")
    String unsentDrop();

    @Message("Throw this draft away for good?")
    String unsentDropSure();

    @Message("Litter of # , entered")
    String unsentOf();

    @Message("no female chosen")
    String unsentNoDam();

    @Message("Begun, not finished. It is kept while you type.")
    String unsentTyping();

    @Message("Ready. It is sent as soon as there is reception.")
    String unsentWaiting();

    @Message("Sign in, then it is sent.")
    String unsentSignIn();

    @Message("The server did not take it. Open it to see what is wrong.")
    String unsentRefused();

    @Message("Sending …")
    String unsentSending();

    @Message("Sent: look at the litter.")
    String unsentSent();

    @Message("Kept on this device. It is sent when there is reception.")
    String unsentLater();

    @Message("Your draft is here again, as you left it.")
    String unsentRestored();

    @Message("Start anew")
    String unsentAnew();

    @Message("Kept copy of")
    String unsentKept();

    @Message("This browser keeps no drafts: without reception nothing is saved.")
    String unsentNoKeeping();

    @Message
    String originWord(Origin origin);

    @Message
    String twinKind(TwinKind kind);

    @Message
    String momentWord(Moment moment);

    @Message
    String lossWord(LossReading.Loss loss);

    @Message
    String verdict(LossReading.Verdict verdict);

    @Message
    String signKind(FatherlessSigns.Kind kind);

    @Message
    String signState(FatherlessSigns.State state);

    @Message("Sex of young {place}")
    String sexOf(String place);

    @Message("Your name for young {place}")
    String referenceOf(String place);

    @Message("Mass of young {place}")
    String massOf(String place);

    @Message("sex?")
    String sexNotKnown();

    @Message("What became of them")
    String became();

    @Message("{count} live-born")
    String nLiveBorn(int count);

    @Message("{count} stillborn")
    String nStillborn(int count);

    @Message("{count} part-developed")
    String nPartDeveloped(int count);

    @Message("{count} slugs")
    String nSlugs(int count);

    @Message("{count} of them malformed")
    String nMalformed(int count);

    @Message("{count} infertile")
    String nInfertile(int count);

    @Message("{count} early dead")
    String nEarlyDead(int count);

    @Message("Look at the signs")
    String fatherlessLook();
}
