package org.demebook.web.handover;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.handover.SheetState;

/** Words of the pages of hand-over sheets. */
@MessageBundle("handoversheet")
public interface SheetMessages {
    // ── sheets
    // ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Message("Hand-over sheets")
    String sheetsTitle();

    @Message(
            "What the register knows of the animal on the day it changes hands, on paper. A later sheet supersedes an earlier one.")
    String sheetsLede();

    @Message("May it leave?")
    String mayItLeave();

    @Message("Ready: every condition is met.")
    String isReady();

    @Message("Not ready: look at what is open.")
    String isNotReady();

    @Message("It is established (sheds, meals and mass are as asked for), and its sheet will name the rest.")
    String isEstablished();

    @Message("A sheet can be issued all the same; it will say “not established”.")
    String isNotEstablished();

    @Message("met")
    String met();

    @Message("not met")
    String notMet();

    @Message("not known")
    String notKnown();

    @Message("Issue a sheet")
    String issueSheet();

    @Message("It is in a transfer, and the sheet says the same: {kind}.")
    String inTransferAs(String kind);

    @Message("Name me on it")
    String showName();

    @Message("In full, for whoever reads it. Otherwise it says “a keeper of this register”.")
    String showNameHint();

    @Message("Issue the sheet")
    String issue();

    @Message("Issue it as “not established”")
    String issueNotEstablished();

    @Message("Issued so far")
    String issuedSheets();

    @Message("None yet. Issue one above when it is to go.")
    String noSheetYet();

    @Message("None that you may read. Who holds the animal issues them.")
    String noSheetForYou();

    @Message("Issued on")
    String issuedOn();

    @Message("Code on the paper")
    String codeOnPaper();

    @Message("Paper")
    String paper();

    @Message("On paper")
    String onPaper();

    @Message("Print it (PDF, A4)")
    String printPdf();

    @Message("Look at it")
    String lookAtIt();

    @Message(
            "As it was shown when you handed the animal out; it is printed and stored nowhere. Lost: get a fresh one from its transfer.")
    String printCodeHint();

    @Message("Print it with the claim code")
    String printWithCode();

    @Message("It says “not established”:")
    String saysNotEstablished();

    @Message("Withdrawn on")
    String withdrawnOn();

    @Message("Digest (SHA-256)")
    String digest();

    @Message("Whoever has the paper can check with its code that it is genuine, without signing in.")
    String checkHint();

    @Message("Withdraw it")
    String withdrawSheet();

    @Message("It was issued by mistake, or is wrong")
    String withdrawSheetWhy();

    // ── what is one of several
    // ──────────────────────────────────────────────────────────────────────────────────────────

    @Message
    String sheetState(SheetState one);

    @Message
    String sheetStands(SheetState one);
}
