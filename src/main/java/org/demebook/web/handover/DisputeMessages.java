package org.demebook.web.handover;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.transfer.DisputeState;
import org.demebook.transfer.Outcome;

/** Words of the pages of animals that are reported in two places. */
@MessageBundle("dispute")
public interface DisputeMessages {
    // ── disputes
    // ──────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Reported in two places")
    String disputes();

    @Message("Dispute")
    String dispute();

    @Message("A keeper who gave or received an animal reports it with them, and the register has it elsewhere.")
    String disputesLede();

    @Message(
            "No animal is reported in two places as far as it concerns you. To report one, open the transfer by which it left or came.")
    String noDisputes();

    @Message("reported by you")
    String youReported();

    @Message("reported elsewhere")
    String wasReported();

    @Message("seen there on {day}")
    String seenOnDay(String day);

    @Message(
            "If the animal is where the register has it, take your report back. Otherwise wait: the other side can agree, or a coordinator decides.")
    String takeBackReport();

    @Message("Take the report back")
    String withdrawReport();

    @Message(
            "If the animal is where it was reported, agree: it moves there, and the matter is settled. Otherwise do nothing, and tell a coordinator what speaks for you.")
    String giveWay();

    @Message("Agree: it is there")
    String concede();

    @Message(
            "Ask both sides: a transponder that is read, a photograph of today. Then decide; all of them see your reason.")
    String askBoth();

    @Message("Where is it?")
    String whereIsIt();

    @Message("What it rests on")
    String restsOn();

    @Message("Decide")
    String settle();

    @Message("All sides see it.")
    String allSeeIt();

    @Message("Reported on")
    String reportedOn();

    @Message("Seen there on")
    String seenThereOn();

    @Message("What was said for it")
    String saidForIt();

    @Message("Reported by")
    String reporters();

    @Message("In the register with")
    String holders();

    @Message("Transfer")
    String transfer();

    @Message("Meanwhile")
    String meanwhile();

    @Message("Until it is settled, the animal changes hands no more and is counted once, where the register has it.")
    String meanwhileText();

    @Message("The register has it elsewhere, and it is with you? Whoever gave or received it in a transfer can say so.")
    String reportLede();

    @Message("Report it with you")
    String reportIt();

    @Message("The last day on which you saw it with you")
    String seenWithMeOn();

    @Message("In your collection")
    String inCollection();

    @Message("What speaks for it")
    String whatSpeaksForIt();

    @Message("A transponder that was read, a mark, how it came there. All sides see it.")
    String whatSpeaksForItHint();

    @Message("Report it")
    String report();

    // ── what is one of several
    // ──────────────────────────────────────────────────────────────────────────────────────────

    @Message
    String disputeState(DisputeState one);

    @Message
    String disputeStands(DisputeState one);

    @Message
    String outcome(Outcome one);
}
