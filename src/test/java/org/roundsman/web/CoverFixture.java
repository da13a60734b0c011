package org.roundsman.web;

/** A purchase with evidence, a contract and a calendar address of a marked place. */
final class CoverFixture {

    private CoverFixture() {}

    /** Ids of what was made. */
    record Marked(long purchaseId, long contractId, long evidenceId, long calendarId) {

        /** As further alternatives of a pattern of addresses. */
        String either() {
            return "|/" + purchaseId + "|/" + contractId + "|/" + evidenceId + "|/" + calendarId;
        }
    }

    /** The contract ends far enough ahead that it covers the unit in every time zone, whatever the hour of the test. */
    static Marked mark(MarkedPlaces places, FleetFixture.Place place, String marker, long account) {
        places.tell(
                "insert into purchase (customer_id, serial, site_id, device_id, supplier, order_number, invoice_number,"
                        + " bought_on, note) select " + place.customerId() + ", t, " + place.siteId() + ", "
                        + place.deviceId() + ", t, t, t, current_date, t from (select ?::text t) one",
                marker);
        long purchase = places.number("select id from purchase where customer_id = " + place.customerId());
        places.tell(
                "insert into warranty_contract (customer_id, number, supplier, begins_on, ends_on, note) select "
                        + place.customerId() + ", t, t, current_date-1, current_date+7, t from (select ?::text t) one",
                marker);
        long contract = places.number("select id from warranty_contract where customer_id = " + place.customerId());
        places.tell("insert into contract_unit (contract_id, serial) values (" + contract + ", ?)", marker);
        places.tell(
                "insert into evidence (purchase_id, name, kind, octets, sha256, content, added_by, added_at) select "
                        + purchase + ", t || '.pdf', 'PDF', length(c), sha256(c), c, t, now() from (select ?::text t,"
                        + " convert_to('%PDF-1.7 ' || ?::text, 'UTF8') c) one",
                marker,
                marker);
        places.tell(
                "insert into calendar_address (account_id, name, hash, customer_id, created_at) select " + account
                        + ", t, sha256(convert_to(t, 'UTF8')), " + place.customerId()
                        + ", now() from (select ?::text t) one",
                marker);
        return new Marked(
                purchase,
                contract,
                places.number("select id from evidence where purchase_id = " + purchase),
                places.number("select id from calendar_address where account_id = " + account));
    }
}
