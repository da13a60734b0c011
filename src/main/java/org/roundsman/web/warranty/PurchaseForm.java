package org.roundsman.web.warranty;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.PurchaseDraft;
import org.roundsman.warranty.Purchase;

/** What the form of a purchase sent, as text, to be shown again when something in it is wrong. */
record PurchaseForm(
        @RestForm String customer,
        @RestForm String serial,
        @RestForm String model,
        @RestForm String site,
        @RestForm String device,
        @RestForm String supplier,
        @RestForm String orderNumber,
        @RestForm String invoiceNumber,
        @RestForm String boughtOn,
        @RestForm String deliveredOn,
        @RestForm String installedOn,
        @RestForm String price,
        @RestForm String currency,
        @RestForm String note) {

    PurchaseForm {
        customer = Asked.text(customer);
        serial = Asked.text(serial);
        model = Asked.text(model);
        site = Asked.text(site);
        device = Asked.text(device);
        supplier = Asked.text(supplier);
        orderNumber = Asked.text(orderNumber);
        invoiceNumber = Asked.text(invoiceNumber);
        boughtOn = Asked.text(boughtOn);
        deliveredOn = Asked.text(deliveredOn);
        installedOn = Asked.text(installedOn);
        price = Asked.text(price);
        currency = Asked.text(currency);
        note = Asked.text(note);
    }

    /** An empty form for a unit of that customer. */
    static PurchaseForm blank(String customer, String serial, String site, String device) {
        return new PurchaseForm(customer, serial, "", site, device, "", "", "", "", "", "", "", "", "");
    }

    static PurchaseForm of(Purchase one) {
        PurchaseDraft facts = one.facts();
        return new PurchaseForm(
                String.valueOf(one.customerId()),
                facts.serial(),
                one.modelId().isPresent() ? String.valueOf(one.modelId().getAsLong()) : "",
                Objects.toString(facts.siteId(), ""),
                Objects.toString(facts.deviceId(), ""),
                facts.supplier(),
                facts.orderNumber(),
                facts.invoiceNumber(),
                Objects.toString(facts.boughtOn(), ""),
                Objects.toString(facts.deliveredOn(), ""),
                Objects.toString(facts.installedOn(), ""),
                facts.price() == null ? "" : facts.price().toPlainString(),
                facts.currency(),
                facts.note());
    }

    /** The same at that site and device. */
    PurchaseForm at(String siteId, String deviceId) {
        return new PurchaseForm(
                customer,
                serial,
                model,
                siteId,
                deviceId,
                supplier,
                orderNumber,
                invoiceNumber,
                boughtOn,
                deliveredOn,
                installedOn,
                price,
                currency,
                note);
    }

    OptionalLong modelId() {
        return Asked.number(model);
    }

    /**
     * What was entered.
     *
     * @throws InputRejected naming each field that cannot be read
     */
    PurchaseDraft draft() {
        Map<String, String> faults = new LinkedHashMap<>();
        PurchaseDraft draft = new PurchaseDraft(
                serial,
                id(site),
                id(device),
                supplier,
                orderNumber,
                invoiceNumber,
                day(faults, "boughtOn", boughtOn),
                day(faults, "deliveredOn", deliveredOn),
                day(faults, "installedOn", installedOn),
                amount(faults),
                currency.toUpperCase(Locale.ROOT),
                note);
        if (!faults.isEmpty()) {
            Map<String, String> all = new LinkedHashMap<>(draft.faults());
            all.putAll(faults);
            throw new InputRejected(all);
        }
        return draft;
    }

    private static Long id(String text) {
        OptionalLong id = Asked.number(text);
        return id.isPresent() ? id.getAsLong() : null;
    }

    private static LocalDate day(Map<String, String> faults, String field, String text) {
        try {
            return text.isEmpty() ? null : LocalDate.parse(text);
        } catch (DateTimeException e) {
            faults.put(field, "a day, such as 2026-03-29");
            return null;
        }
    }

    private BigDecimal amount(Map<String, String> faults) {
        if (price.isEmpty()) {
            return null;
        }
        if (price.matches("[0-9]{1,12}([.,][0-9]{1,4})?")) {
            return new BigDecimal(price.replace(',', '.'));
        }
        faults.put("price", "digits with a point or comma before the cents, such as 189.90");
        return null;
    }
}
