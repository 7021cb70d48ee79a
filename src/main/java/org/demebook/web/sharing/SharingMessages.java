package org.demebook.web.sharing;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.GrantState;
import org.demebook.consent.Purpose;
import org.demebook.consent.ReadyChoice;
import org.demebook.consent.Recipient.Kind;

/** Words of the pages of sharing, and of leaving. */
@MessageBundle("sharing")
public interface SharingMessages {
    @Message("Sharing")
    String title();

    @Message("Others see nothing of your animals unless you grant it. You can take it back at any moment.")
    String lede();

    @Message("What others can do with it now")
    String now();

    @Message("Nobody sees, computes with or counts any of it.")
    String nothingNow();

    @Message("Who")
    String who();

    @Message("May")
    String mayDo();

    @Message("With what")
    String what();

    @Message("For what")
    String forWhat();

    @Message("Animals")
    String ofAnimals();

    @Message("{count} of {all}")
    String ofHowMany(Integer count, Integer all);

    @Message("Ready choices")
    String readyChoices();

    @Message("Look and choose")
    String choose();

    @Message("Chosen")
    String chosen();

    @Message("chosen on {day}")
    String chosenOn(String day);

    @Message("Nothing was chosen yet: nothing is shared by a ready choice.")
    String neverChosen();

    @Message("Grants written by hand")
    String byHand();

    @Message("None.")
    String noneByHand();

    @Message("Write a grant")
    String giveGrant();

    @Message("All grants, past ones too")
    String allGrants();

    @Message("Who looked")
    String seen();

    @Message("Nobody has looked so far.")
    String nobodyLooked();

    @Message("All that was seen")
    String allSeen();

    @Message("Day")
    String seenOn();

    @Message("Times")
    String times();

    @Message("Each animal counts once for each answer that it was in; the day is that of UTC.")
    String timesHint();

    @Message("What you consent to")
    String noticeTitle();

    @Message("Leave this population")
    String leave();

    @Message("a keeper who is gone")
    String goneKeeper();

    @Message("You act for no collection here, so you have nothing to share. Open one on the page of members.")
    String noCollection();

    @Message("Share by a ready choice")
    String choiceTitle();

    @Message("What would change")
    String wouldChange();

    @Message("Nothing: this is what holds already.")
    String nothingChanges();

    @Message("Now")
    String before();

    @Message("Then")
    String after();

    @Message("Choose this")
    String chooseThis();

    @Message("Other choices")
    String otherChoices();

    @Message("Grants written by hand stay as they are.")
    String byHandStay();

    @Message("Collection")
    String collection();

    @Message("To whom")
    String recipientLabel();

    @Message("Which keeper")
    String member();

    @Message("nobody chosen")
    String noKeeper();

    @Message("Their sign-in name, when you chose one keeper above.")
    String nameHint();

    @Message("Only when you chose one keeper above.")
    String memberHint();

    @Message("Which animals")
    String animalsLabel();

    @Message("Studbook numbers with spaces between; empty for all of the collection, later ones too.")
    String animalsHint();

    @Message("Which parts of the records")
    String fieldGroups();

    @Message("For what")
    String purposes();

    @Message("What may be done")
    String actions();

    @Message("Until")
    String until();

    @Message("The last day, at most 24 months ahead.")
    String untilHint();

    @Message("What you ask for")
    String conditions();

    @Message("In your own words; kept with the grant, nothing is decided by it.")
    String conditionsHint();

    @Message("See what it would change")
    String see();

    @Message("Give it")
    String give();

    @Message("A grant")
    String grantTitle();

    @Message("Given by")
    String givenBy();

    @Message("Given on")
    String givenOn();

    @Message("From")
    String from();

    @Message("State")
    String stateLabel();

    @Message("With the choice")
    String withChoice();

    @Message("all of the collection, later ones too")
    String wholeCollection();

    @Message("Take it back")
    String withdraw();

    @Message(
            "From that moment on nothing more is shown, computed or counted on it. What somebody read before cannot be unread, and counts that were published stay published.")
    String withdrawHint();

    @Message("Give the same again for 24 months")
    String renew();

    @Message("Receipt")
    String receipt();

    @Message("A consent record after ISO/IEC TS 27560; print it or keep it.")
    String receiptLede();

    @Message("Record")
    String record();

    @Message("Who consented")
    String principal();

    @Message("Status")
    String statusLabel();

    @Message("Where it is kept")
    String storage();

    @Message("What becomes of it")
    String retention();

    @Message("Law")
    String jurisdiction();

    @Message("Basis")
    String legalBasis();

    @Message("Version of the notice")
    String noticeVersion();

    @Message("What happened")
    String events();

    @Message("The same for programs")
    String receiptJson();

    @Message("Leave this population")
    String leavingTitle();

    @Message(
            "Your name, texts and photographs go; your animals stay, each under a holder of its own without a name, so that nobody's pedigree changes. It cannot be taken back.")
    String leavingLede();

    @Message("First take everything out")
    String takeOut();

    @Message("Everything that you wrote or hold, as a zip")
    String archive();

    @Message("What goes")
    String goes();

    @Message("What stays")
    String stays();

    @Message("What has to come to its end first")
    String inTheWay();

    @Message("Your sign-in name once more")
    String nameAgain();

    @Message("Leave for good")
    String erase();

    @Message("Back to sharing")
    String backToSharing();

    @Message
    String choice(ReadyChoice choice);

    @Message
    String choiceMeans(ReadyChoice choice);

    @Message
    String recipient(Kind kind);

    @Message
    String fieldGroup(FieldGroup group);

    @Message
    String purpose(Purpose purpose);

    @Message
    String action(Action action);

    @Message
    String state(GrantState state);

    @Message("Other nodes")
    String otherNodes();

    @Message(
            "What is public every node is told. Here you choose what the members of one more node may do; members of this node are another choice.")
    String otherNodesMean();

    @Message("Node {code}")
    String nodeCalled(String code);

    @Message(
            "Something was withdrawn in this population, and these nodes have not confirmed yet that they erased it: {codes}. They are asked again until they do.")
    String silentNodes(String codes);
}
