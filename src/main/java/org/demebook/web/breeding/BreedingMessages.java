package org.demebook.web.breeding;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.breeding.CycleView;
import org.demebook.breeding.SignKind;
import org.demebook.gestation.Grade;
import org.demebook.gestation.HowKnown;
import org.demebook.incubation.Warmth;

/** Words of the pages of breeding. */
@MessageBundle("breeding")
public interface BreedingMessages {
    @Message("Pairs and breeding")
    String title();

    @Message("Together now")
    String together();

    @Message(
            "No pair is together. Record an introduction when you put a male to a female: her litter finds its sire by it.")
    String nobodyTogether();

    @Message("Record an introduction")
    String introduce();

    @Message("Introductions")
    String introductions();

    @Message("Introduction")
    String introduction();

    @Message("Together")
    String togetherFrom();

    @Message("Over")
    String over();

    @Message("No introduction has ended yet.")
    String noneOver();

    @Message("No introduction is on record.")
    String none();

    @Message("Earlier ones")
    String earlier();

    @Message("Female")
    String female();

    @Message("Male")
    String male();

    @Message("Pair")
    String pair();

    @Message("First day together")
    String from();

    @Message("Last day together")
    String until();

    @Message("Leave it empty while they are together.")
    String untilHint();

    @Message("since {day}")
    String since(String day);

    @Message("Notes")
    String notes();

    @Message("Separate")
    String separate();

    @Message("Separated today")
    String separated();

    @Message("Correct")
    String change();

    @Message("Record the introduction")
    String saveIntroduction();

    @Message("Save the correction")
    String saveChange();

    @Message("They are separated")
    String endTitle();

    @Message("It never took place")
    String withdrawIntroduction();

    @Message(
            "It stays in the history and counts for nothing. If one of the two animals is wrong, take it back and record it anew.")
    String withdrawIntroductionHint();

    @Message("taken back")
    String withdrawn();

    @Message("Why")
    String reason();

    @Message("Take it back")
    String takeBack();

    @Message("Do not put an animal that is in quarantine, or shows signs of illness, to another.")
    String quarantineCare();

    @Message("Choose")
    String choose();

    @Message("Breeding of {number}")
    String ofAnimal(String number);

    @Message("Breeding cycle")
    String cycle();

    @Message("When young are due")
    String due();

    @Message("no day")
    String noDay();

    @Message("{days} days from the sign, more or less {spread}")
    String expectedDays(int days, int spread);

    @Message("Counted from")
    String countedFrom();

    @Message("Likely days")
    String likelyDays();

    @Message("Half of births")
    String half();

    @Message("Nine of ten births")
    String nineTenths();

    @Message("To be reckoned with from")
    String earliest();

    @Message("Overdue from")
    String overdueFrom();

    @Message("Without her history")
    String withoutHistory();

    @Message("Months")
    String months();

    @Message("Why")
    String whySo();

    @Message("Reminders")
    String reminders();

    @Message("In your calendar")
    String calendar();

    @Message("The days come into your calendar by themselves.")
    String calendarHint();

    @Message("What to do now")
    String doNow();

    @Message("in {days} days")
    String inDays(long days);

    @Message("today")
    String dueToday();

    @Message("{days} days past")
    String daysPast(long days);

    @Message("Likely {from} to {until}.")
    String likely(String from, String until);

    @Message("Likely days {from} to {until}; today is {today}")
    String likelyPicture(String from, String until, String today);

    @Message("Breeding signs")
    String signs();

    @Message("Nothing is noted. The shed after the ovulation tells the day best.")
    String noSigns();

    @Message("Note a breeding sign")
    String noteSign();

    @Message("Sign")
    String sign();

    @Message("What was seen")
    String whatSeen();

    @Message("Day")
    String day();

    @Message("How the day is known")
    String howKnownLabel();

    @Message("Time of day")
    String moment();

    @Message("Of labour: when it began or ended, on this day.")
    String momentHint();

    @Message("Male")
    String withMale();

    @Message("Of a copulation.")
    String withMaleHint();

    @Message("Eggs")
    String eggs();

    @Message("Of a laying.")
    String eggsHint();

    @Message("Note it")
    String saveSign();

    @Message("Breeding sign of {number}")
    String signOf(String number);

    @Message("It was not so")
    String withdrawSign();

    @Message("It stays in the history and counts for nothing.")
    String withdrawSignHint();

    @Message("Labour")
    String labour();

    @Message("Labour starts now")
    String labourStarts();

    @Message("Labour is over")
    String labourEnds();

    @Message("After 24 hours look again; after 48 hours see a reptile veterinarian. Do not press on her.")
    String labourCare();

    @Message("Who a litter born today would come from")
    String candidates();

    @Message("No male is on record with her.")
    String candidatesNone();

    @Message("Conceived about {day}.")
    String conceived(String day);

    @Message("Last together")
    String lastMet();

    @Message("Share")
    String share();

    @Message("mating seen")
    String copulationSeen();

    @Message("Her cycle is told to whoever keeps her.")
    String notHeld();

    @Message("A male has no cycle; here is with whom he was.")
    String ofMale();

    @Message("Its sex is not known; determine it first.")
    String sexUnknown();

    @Message("Clutches")
    String incubations();

    @Message("No clutch is incubated.")
    String noIncubations();

    @Message("A clutch into the incubator")
    String incubate();

    @Message("Since")
    String startedOn();

    @Message("Set point")
    String setPoint();

    @Message("Scale")
    String scale();

    @Message("Clutch of {female}")
    String incubation(String female);

    @Message("Readings")
    String readings();

    @Message("Not read yet.")
    String noReadings();

    @Message("The thermometer shows")
    String readNow();

    @Message("Write it down")
    String saveReading();

    @Message("When")
    String readAt();

    @Message("State")
    String state();

    @Message("Calendar")
    String calendarTitle();

    @Message
    String stage(CycleView.Stage stage);

    @Message
    String kind(SignKind kind);

    @Message
    String howKnown(HowKnown howKnown);

    @Message
    String grade(Grade grade);

    @Message
    String warmth(Warmth warmth);
}
