/**
 * A keeper's calendar: what is to be done and when births are due, of all their populations, for a calendar program that
 * reads it by a secret address (iCalendar, RFC 5545).
 *
 * <p>Only shows; nothing is decided here. No person and no place is named in it. Door: {@link
 * org.demebook.calendar.Calendars}.
 */
@NullMarked
package org.demebook.calendar;

import org.jspecify.annotations.NullMarked;
