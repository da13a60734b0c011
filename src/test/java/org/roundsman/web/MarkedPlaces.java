package org.roundsman.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import javax.sql.DataSource;
import org.roundsman.people.Accounts;
import org.roundsman.people.NewToken;
import org.roundsman.people.Person;
import org.roundsman.people.PersonalTokens;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.people.TokenScope;

/** Places of customers with one word of their own in every text, so that it is seen wherever it comes out; and tokens. */
@ApplicationScoped
public class MarkedPlaces {

    private static final int DAYS = 30;

    private final FleetFixture fleet;
    private final Accounts accounts;
    private final PersonalTokens tokens;
    private final ReportsFixture reports;
    private final DataSource database;

    MarkedPlaces(
            FleetFixture fleet, Accounts accounts, PersonalTokens tokens, ReportsFixture reports, DataSource database) {
        this.fleet = fleet;
        this.accounts = accounts;
        this.tokens = tokens;
        this.reports = reports;
        this.database = database;
    }

    /**
     * One customer's.
     *
     * @param marker in every text of the place and in no other
     * @param viewerToken a token of a viewer of that customer
     */
    public record Place(
            String marker,
            long customerId,
            long siteId,
            long credentialId,
            long deviceId,
            long networkId,
            long accountId,
            long tokenId,
            long workId,
            long alarmId,
            CoverFixture.Marked cover,
            Hardware hardware,
            ReportsFixture.Marked reports,
            String viewerToken) {}

    /** A unit that lies in a store room of the customer, and a claim about it. */
    public record Hardware(long unitId, long claimId, long spareId, long roomId) {}

    public Place place(String name) {
        FleetFixture.Place plain = fleet.place(name);
        String marker = plain.customer().substring(plain.customer().lastIndexOf(' ') + 1);
        fill(plain, marker);
        SignedIn viewer = somebody(Role.VIEWER, plain.customerId());
        tell("update account set shown_name = ? where id = " + viewer.accountId(), marker);
        String token = token(viewer, "token " + marker, EnumSet.of(TokenScope.READ), null);
        return new Place(
                marker,
                plain.customerId(),
                plain.siteId(),
                plain.credentialId(),
                plain.deviceId(),
                number("select id from network where site_id = " + plain.siteId()),
                viewer.accountId(),
                number("select id from personal_token where account_id = " + viewer.accountId()),
                number("select id from planned_work where customer_id = " + plain.customerId()),
                alarm(plain, marker),
                CoverFixture.mark(this, plain, marker, viewer.accountId()),
                hardware(plain, marker),
                reports.mark(plain, marker),
                token);
    }

    private void fill(FleetFixture.Place place, String marker) {
        String site = " where id = " + place.siteId();
        tell("update customer set note = ? where id = " + place.customerId(), marker);
        for (String column : new String[] {"street", "postcode", "town", "access_note"}) {
            tell("update site set " + column + " = ?" + site, marker);
        }
        tell(
                "insert into site_contact (site_id, name, duty, phone, email) select " + place.siteId()
                        + ", t, t, t, t from (select ?::text t) one",
                marker);
        tell("update credential set user_name = ? where id = " + place.credentialId(), marker);
        tell("update device set place = ? where id = " + place.deviceId(), marker);
        tell(
                "insert into planned_work (reach, customer_id, site_id, title, reason, kind, from_at, to_at, made_by,"
                        + " made_at, over_at) select 'SITE', " + place.customerId() + ", " + place.siteId()
                        + ", t, t, 'ONCE', now(), now() + interval '9 hours', t, now(), now() + interval '9 hours'"
                        + " from (select ?::text t) one",
                marker);
        tell("insert into network (site_id, ssid) values (" + place.siteId() + ", ?)", marker);
        tell(
                "insert into device_fact (device_id, fact, value, since) values (" + place.deviceId()
                        + ", 'SERIAL', ?, now())",
                marker);
        tell("insert into radio (device_id, number, label) values (" + place.deviceId() + ", 1, ?)", marker);
        tell(
                "insert into device_event (device_id, at, kind, title, old_value, new_value, detail) select "
                        + place.deviceId() + ", now(), 'FACT_CHANGED', t, t, t, t from (select ?::text t) one",
                marker);
        tell(
                "insert into audit_entry (at, actor, via, action, subject, subject_name, customer_id) select now(), t,"
                        + " 'PAGE', 'changed', 'site', t, " + place.customerId() + " from (select ?::text t) one",
                marker);
    }

    /** An active alarm of the place's device, with a change and a note. */
    private long alarm(FleetFixture.Place place, String marker) {
        long alarm = number("select nextval(pg_get_serial_sequence('alarm', 'id'))");
        long episode = number("select nextval(pg_get_serial_sequence('alarm_episode', 'id'))");
        tell("insert into alarm (id, type, resource_kind, resource_id, episode_id) values (" + alarm
                + ", 'device-silent', 'DEVICE', " + place.deviceId() + ", " + episode + ")");
        tell(
                "insert into alarm_episode (id, alarm_id, type, device_id, customer_id, customer, site_id, site,"
                        + " time_zone, resource_name, place, began, raised, changed, severity, highest, text, text_at,"
                        + " evidence) select " + episode + ", " + alarm + ", 'device-silent', " + place.deviceId()
                        + ", "
                        + place.customerId() + ", t, " + place.siteId() + ", t, 'Europe/Berlin', t, t, now(), now(),"
                        + " now(), 5, 5, t, now(), array[t] from (select ?::text t) one",
                marker);
        tell(
                "insert into alarm_change (alarm_id, episode_id, at, severity, text) select " + alarm + ", " + episode
                        + ", now(), 5, t from (select ?::text t) one",
                marker);
        tell(
                "insert into alarm_act (alarm_id, episode_id, at, by, kind, text) select " + alarm + ", " + episode
                        + ", now(), t, 'NOTE', t from (select ?::text t) one",
                marker);
        return alarm;
    }

    private Hardware hardware(FleetFixture.Place place, String marker) {
        long unit = next("unit");
        long claim = next("claim");
        long spare = next("spare");
        long room = next("store_room");
        tell(
                "insert into unit (id, customer_id, serial, known_since) overriding system value values (" + unit + ", "
                        + place.customerId() + ", ?, now())",
                marker);
        tell(
                "insert into unit_stay (unit_id, customer_id, site_id, device_id, device_name, site_name, from_at,"
                        + " standing) select " + unit + ", " + place.customerId() + ", " + place.siteId() + ", "
                        + place.deviceId()
                        + ", t, t, now(), 'READ' from (select ?::text t) one",
                marker);
        tell(
                "insert into store_room (id, customer_id, name, note) overriding system value select " + room + ", "
                        + place.customerId() + ", t, t from (select ?::text t) one",
                marker);
        tell(
                "insert into spare (id, unit_id, room_id, since, note) overriding system value values (" + spare + ", "
                        + unit + ", " + room + ", now(), ?)",
                marker);
        tell(
                "insert into claim (id, customer_id, unit_id, site_id, device_id, state, opened_at, opened_by,"
                        + " changed_at, serial, model, place, time_zone, fault, terms, cover, failure, party, reference)"
                        + " overriding system value select " + claim + ", " + place.customerId() + ", " + unit + ", "
                        + place.siteId()
                        + ", " + place.deviceId()
                        + ", 'OPENED', now(), t, now(), t, t, t, 'UTC', t, t, t, array[t], t, t"
                        + " from (select ?::text t) one",
                marker);
        return new Hardware(unit, claim, spare, room);
    }

    private long next(String table) {
        return number("select nextval(pg_get_serial_sequence('" + table + "', 'id'))");
    }

    /** Somebody in that role. */
    public SignedIn somebody(Role role, Long customer) {
        String name = fleet.person(role, customer);
        Person person = accounts.all().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
        return new SignedIn(person.id(), name, name, role, Optional.ofNullable(customer), false);
    }

    /** A token of somebody in that role, with those scopes. */
    public String token(Role role, Long customer, Set<TokenScope> scopes, Long narrowedTo) {
        return token(somebody(role, customer), "round robin", scopes, narrowedTo);
    }

    public String token(SignedIn person, String name, Set<TokenScope> scopes, Long narrowedTo) {
        return tokens.add(person, new NewToken(name, scopes, DAYS, Optional.ofNullable(narrowedTo)));
    }

    /** One number out of the database. */
    public long number(String question) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(question);
                ResultSet row = statement.executeQuery()) {
            row.next();
            return row.getLong(1);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Changes something behind the program's back. */
    public void tell(String change, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(change)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
