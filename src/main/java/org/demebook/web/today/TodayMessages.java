package org.demebook.web.today;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.care.CareKind;
import org.demebook.care.SilenceScope;

/** Words of the page of today, of care tasks and of the calendar. */
@MessageBundle("today")
public interface TodayMessages {
    @Message("What is to be done")
    String title();

    @Message(
            "Nothing is to be done. Tasks come by themselves from what you write down of your animals, litters and grants; write down one of your own if you like.")
    String nothing();

    @Message("{today} due today, {late} late")
    String summary(int today, int late);

    @Message("Waiting for you")
    String waiting();

    @Message("Late")
    String late();

    @Message("Today")
    String dueToday();

    @Message("Next days")
    String ahead();

    @Message("Expected births")
    String births();

    @Message("today")
    String today();

    @Message("tomorrow")
    String tomorrow();

    @Message("{days} days late")
    String daysLate(int days);

    @Message("1 day late")
    String dayLate();

    @Message("up to {days} days late")
    String upTo(int days);

    @Message("{from} to {until}")
    String window(String from, String until);

    @Message("moved from {day}")
    String moved(String day);

    @Message("{count} animals")
    String animals(long count);

    @Message("Each of them")
    String each();

    @Message("Ate")
    String ate();

    @Message("Refused")
    String refused();

    @Message("Shed")
    String shed();

    @Message("Done")
    String done();

    @Message("All ate")
    String allAte();

    @Message("All shed")
    String allShed();

    @Message("All done")
    String allDone();

    @Message("Enter the litter")
    String enterLitter();

    @Message("Weigh")
    String weigh();

    @Message("Enter a test")
    String enterTest();

    @Message("Add a photograph")
    String takePhoto();

    @Message("End or prolong it")
    String seeQuarantine();

    @Message("Answer")
    String answer();

    @Message("Look at it")
    String decide();

    @Message("Later")
    String later();

    @Message("{number} is in dispute")
    String disputed(String number);

    @Message("A keeper reports it elsewhere since {day}. Concede if they are right, else say where it is.")
    String disputeWhy(String day);

    @Message("Done")
    String wasDone();

    @Message("Moved to {day}")
    String wasMoved(String day);

    @Message("You will not hear of it")
    String wasSilenced();

    @Message("{count} tasks: {what}")
    String manyDone(long count, String what);

    @Message("Take back")
    String takeBack();

    @Message("Add a task")
    String addOwn();

    @Message("What was done")
    String doneList();

    @Message("Of the last 60 days, the latest first.")
    String doneLede();

    @Message(
            "Nothing was ticked off in the last 60 days. Meals and sheds that you write down are among the care records of their animals.")
    String doneNothing();

    @Message("{day}, by {who}")
    String doneOn(String day, String who);

    @Message("Silent")
    String silent();

    @Message("What is silent")
    String silencedList();

    @Message("No task is silent.")
    String silencedNothing();

    @Message("What you do not want to hear of")
    String silences();

    @Message("You hear of everything. To silence a task, or all of its kind, tap Later at it.")
    String silencesNothing();

    @Message("Hear of it again")
    String hearAgain();

    @Message("Calendar")
    String calendar();

    @Message(
            "A calendar on your phone or computer can read what is to be done, in all your populations. Whoever has the address reads it too.")
    String calendarLede();

    @Message("Make the address")
    String calendarOpen();

    @Message("Make a new address")
    String calendarAnew();

    @Message("The address before then leads nowhere.")
    String calendarAnewHint();

    @Message("The calendar has had its address since {day}. It is not kept here and cannot be shown again.")
    String calendarSince(String day);

    @Message("The calendar has no address yet.")
    String calendarNone();

    @Message("Address of your calendar")
    String calendarAddress();

    @Message("It is shown this once. Copy it into your calendar program now, as a calendar to subscribe to.")
    String calendarOnce();

    @Message("End the address")
    String calendarClose();

    @Message("A task of your own")
    String ownTitle();

    @Message("What is to be done")
    String what();

    @Message("Day")
    String dueOn();

    @Message("Again, days after it was done")
    String everyDays();

    @Message("Leave it empty for once.")
    String everyHint();

    @Message("Animal")
    String animal();

    @Message("Studbook number, if it is about one; the animal has to live with you.")
    String animalHint();

    @Message("Collection")
    String collection();

    @Message("Leave it out when an animal is named.")
    String collectionHint();

    @Message("as the animal, or my only one")
    String chooseNone();

    @Message("Add")
    String add();

    @Message("Later")
    String postpone();

    @Message("in 3 days")
    String inThree();

    @Message("in a week")
    String inWeek();

    @Message("On another day")
    String onDay();

    @Message("Move it there")
    String move();

    @Message("This follows from what was recorded of the dam and cannot be moved. Correct that, or silence it.")
    String fixed();

    @Message("Hear no more of it")
    String silence();

    @Message("This one")
    String silenceTask();

    @Message("All of this kind for {animal}")
    String silenceKindOfAnimal(String animal);

    @Message("All of this kind in the collection")
    String silenceKind();

    @Message("Holds for all who act for the collection.")
    String silenceHint();

    @Message("Done, on")
    String doneOther();

    @Message("Done on {day}.")
    String isDone(String day);

    @Message("You do not hear of this.")
    String isSilent();

    @Message("Due {day}")
    String dueOnDay(String day);

    @Message("Now")
    String waits();

    @Message
    String kind(CareKind kind);

    @Message
    String scope(SilenceScope scope);
}
