package org.demebook.web;

import io.quarkus.qute.RawString;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.UriInfo;
import java.math.BigDecimal;
import java.text.NumberFormat;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.Asker;
import org.demebook.keeper.SignedIn;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;
import org.jspecify.annotations.Nullable;

/**
 * What every page knows of the one who looks at it: who it is, in which population, and how they want things written. Templates
 * reach it as {@code inject:visit}.
 */
@Named("visit")
@RequestScoped
public class Visit {
    @Inject
    SignedIn signedIn;

    @Inject
    Accounts accounts;

    @Inject
    Populations populations;

    @Inject
    Assets assets;

    @Inject
    Clock clock;

    @Context
    HttpHeaders headers;

    @Context
    UriInfo uri;

    private @Nullable Preferences preferences;
    private @Nullable Asker asker;
    private @Nullable Standing standing;
    private List<PopulationView> mine = List.of();

    /** Who looks at the page, in a population: every page of a population begins here. Refuses as the API does. */
    public Standing in(String population) {
        standing = signedIn.standing(population);
        asker();
        return standing;
    }

    /** Who looks at the page; refuses when nobody is signed in. */
    public Asker asker() {
        if (asker == null) {
            asker = signedIn.asker();
            mine = populations.of(asker);
        }
        return asker;
    }

    public boolean isSignedIn() {
        return asker != null;
    }

    public String getName() {
        return asker == null ? "" : asker.name();
    }

    /** By which a device tells one keeper's drafts from another's; null when nobody is signed in. */
    public @Nullable UUID getKeeper() {
        return asker == null ? null : asker.keeperId();
    }

    /** When the page was made, so that a copy that a device kept can say how old it is. */
    public Instant getNow() {
        return clock.instant();
    }

    public boolean isAdministrator() {
        return asker != null && asker.administrator();
    }

    public boolean isCoordinator() {
        return standing != null && standing.isCoordinator();
    }

    /** Code of the population that the page is about; null when it is about none. */
    public @Nullable String getPopulation() {
        return standing == null ? null : standing.populationCode();
    }

    public List<PopulationView> getPopulations() {
        return mine;
    }

    /** Whether names and passwords are kept here, and not in a Keycloak. */
    public boolean isLocal() {
        return accounts.isLocal();
    }

    /** The address of the page, without what is asked of it. */
    public String getPath() {
        return uri.getPath();
    }

    /** Where the addresses of the population's pages begin. */
    public String getBase() {
        return "/populations/" + getPopulation();
    }

    /** Marks the way of the main navigation that leads here. */
    public RawString current(String way) {
        var here = getPath().startsWith(getBase() + way);
        return new RawString(here ? " aria-current=\"page\"" : "");
    }

    /** The same of the way to the population, to which its description and its counts belong. */
    public RawString getCurrentPopulation() {
        var below =
                getPath().startsWith(getBase()) ? getPath().substring(getBase().length()) : "/";
        var here = below.isEmpty() || below.matches("/(figures|counts|count-.*|description)(/.*)?");
        return new RawString(here ? " aria-current=\"page\"" : "");
    }

    /** Whether a part of a page is wanted in place of all of it. */
    public boolean isFragment() {
        return headers.getHeaderString("HX-Request") != null;
    }

    /** A fresh key for a form, so that it has one effect however often it is sent. */
    public String getOnce() {
        return UUID.randomUUID().toString();
    }

    /** The address of a file of the pages, which changes with its content. */
    public String asset(String name) {
        return assets.address(name);
    }

    public Preferences getPreferences() {
        if (preferences == null) {
            var cookie = headers.getCookies().get(Preferences.COOKIE);
            preferences = Preferences.of(cookie == null ? null : cookie.getValue(), headers.getAcceptableLanguages());
        }
        return preferences;
    }

    public Locale getLocale() {
        return getPreferences().language().locale();
    }

    public String getLanguage() {
        return getPreferences().language().code();
    }

    public String getAppearance() {
        return getPreferences().appearance().name().toLowerCase(Locale.ROOT);
    }

    /** Today, as the keeper's calendar has it. */
    public LocalDate getToday() {
        return LocalDate.now(clock);
    }

    public String day(@Nullable LocalDate day) {
        return Written.day(day, getPreferences());
    }

    public String day(@Nullable RoughDate date) {
        return Written.day(date, getPreferences());
    }

    public String day(@Nullable Instant moment) {
        return moment == null ? "" : day(LocalDate.ofInstant(moment, ZoneId.systemDefault()));
    }

    /** The zone that days begin and end in. */
    public ZoneId zone() {
        return clock.getZone();
    }

    /** A day with the time of day. */
    public String moment(@Nullable Instant moment) {
        return moment == null
                ? ""
                : "%s, %tR".formatted(day(LocalDate.ofInstant(moment, zone())), moment.atZone(zone()));
    }

    /** A mass in the keeper's unit, with the unit. */
    public String mass(@Nullable BigDecimal grams) {
        return Written.mass(grams, getPreferences());
    }

    /** A length in the keeper's unit, with the unit. */
    public String length(@Nullable BigDecimal millimetres) {
        return Written.length(millimetres, getPreferences());
    }

    /** A number with as many digits after the point as are asked for. */
    public String number(@Nullable Number value, int digits) {
        return Written.number(value, digits, getLocale());
    }

    /** A whole number. */
    public String number(@Nullable Number value) {
        return Written.number(value, 0, getLocale());
    }

    /** A share as per cent, with one digit after the point. */
    public String percent(@Nullable Number share) {
        if (share == null) {
            return "";
        }
        var format = NumberFormat.getPercentInstance(getLocale());
        format.setMaximumFractionDigits(1);
        return format.format(share.doubleValue());
    }
}
