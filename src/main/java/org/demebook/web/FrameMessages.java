package org.demebook.web;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.notation.Sex;

/** Words that every page has, and those of the first pages. */
@MessageBundle("frame")
public interface FrameMessages {
    @Message("Skip to the page")
    String skip();

    @Message("Today")
    String today();

    @Message("Animals")
    String animals();

    @Message("Litters")
    String litters();

    @Message("Hand-over")
    String handover();

    @Message("Pairing")
    String pairing();

    @Message("Season")
    String season();

    @Message("Population")
    String population();

    @Message("Sharing")
    String sharing();

    @Message("Import and export")
    String sheets();

    @Message("Members")
    String members();

    @Message("More")
    String more();

    @Message("Where to")
    String ways();

    @Message("Find by number, name, transponder or label")
    String find();

    @Message("Find")
    String findIt();

    @Message("Sign in")
    String signIn();

    @Message("Sign out")
    String signOut();

    @Message("Signed in as {name}")
    String signedInAs(String name);

    @Message("How pages look")
    String preferences();

    @Message("Name")
    String name();

    @Message("Password")
    String password();

    @Message("Sign-in name")
    String signInName();

    @Message(
            "Demebook keeps records and computes from them; it gives no veterinary and no legal advice. A sick animal, a long labour or a litter that went wrong belongs to a reptile veterinarian. Reptiles can carry Salmonella: wash your hands. Permits, marking and proof of origin differ by place: ask your authority before an animal moves.")
    String cautions();

    @Message("The studbook that keepers share")
    String claim();

    @Message(
            "Register the transfer of a sold neonate, look up a bought animal's ancestry, plan pairings across collections, publish counts: on a server that keepers run themselves, and with every record shown only as far as its keeper lets it be seen.")
    String welcome();

    @Message("Populations")
    String yourPopulations();

    @Message("You belong to no population yet. Ask a coordinator for an invitation, or found one.")
    String noPopulation();

    @Message("Published counts")
    String publishedCounts();

    @Message("Not done")
    String notDone();

    @Message("Look at the marked fields.")
    String lookAtFields();

    @Message("Write a day as year-month-day, such as 2026-06-27.")
    String notADay();

    @Message("Write a number.")
    String notANumber();

    @Message("This is missing.")
    String missing();

    @Message("This cannot be read; look at the hint.")
    String notReadable();

    @Message("Back")
    String back();

    @Message("Keep")
    String keep();

    @Message("Language")
    String language();

    @Message("Days")
    String dates();

    @Message("27 Jun 2026")
    String datesWords();

    @Message("2026-06-27")
    String datesIso();

    @Message("06/27/2026")
    String datesMonthFirst();

    @Message("Masses in")
    String masses();

    @Message("Lengths in")
    String lengths();

    @Message("Light or dark")
    String appearance();

    @Message("As the device")
    String appearanceDevice();

    @Message("Light")
    String appearanceLight();

    @Message("Dark")
    String appearanceDark();

    @Message("Kept on this device.")
    String keptOnDevice();

    @Message
    String sex(Sex sex);

    @Message("Yes")
    String yes();

    @Message("No")
    String no();

    @Message("unknown")
    String unknown();

    @Message("Previous")
    String previous();

    @Message("Next")
    String next();

    @Message("Leave it as it is")
    String leaveAsItIs();

    @Message("Correct what is wrong. What is right although a rule speaks against it is saved with your reason.")
    String leaveHint();

    @Message("How do you know?")
    String leaveReason();
}
